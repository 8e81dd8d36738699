//! Changes of a job's text, its comments kept.

use crate::read::{ReadJson, ToRead};
use crate::refused::{ProblemJson, Refused};
use scenarios::{Edit, edited_with};
use serde::Deserialize;

/// One change: what is set, unset, added or removed, with its value or its name.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(crate) struct EditJson {
    set: Option<String>,
    value: String,
    unset: Option<String>,
    add: Option<String>,
    remove: Option<String>,
    name: String,
}

impl TryFrom<EditJson> for Edit {
    type Error = Refused;

    fn try_from(edit: EditJson) -> Result<Self, Refused> {
        match edit {
            EditJson { set: Some(key), value, .. } => Ok(Self::Set { key, value }),
            EditJson { unset: Some(key), .. } => Ok(Self::Unset { key }),
            EditJson { add: Some(kind), .. } => Ok(Self::Add { kind }),
            EditJson { remove: Some(kind), name, .. } => Ok(Self::Remove { kind, name }),
            _ => Err(Refused::Message("a change says what is set, unset, added or removed".into())),
        }
    }
}

/// Changes a job, one thing after the other: the job with its new text; where something is wrong with that, the text as it was.
pub(crate) fn edit(asked: &str) -> Result<String, Refused> {
    let mut read: ToRead = serde_json::from_str(asked)?;
    let edits: Vec<Edit> = read.edits.drain(..).map(Edit::try_from).collect::<Result<_, _>>()?;
    let before = read.job.text.clone();
    let mut told = match edited_with(&before, &edits, &read.job.texts()) {
        Ok(after) => {
            read.job.text = after;
            read.told()?
        }
        Err(fault) => ReadJson::refused(vec![ProblemJson::from(&fault)]),
    };
    match &mut told {
        ReadJson::Read(job) => job.text = Some(read.job.text),
        ReadJson::Refused { text, .. } => *text = Some(before),
    }
    Ok(serde_json::to_string(&told)?)
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::{Value, json};

    fn edited(edits: &Value) -> (Value, String) {
        let text = scenarios::starter(&scenarios::Answers::default());
        let asked = json!({ "job": { "name": "new.toml", "text": text }, "edits": edits, "units": "us", "clock": "24" });
        (serde_json::from_str(&edit(&asked.to_string()).unwrap()).unwrap(), text)
    }

    fn value<'a>(read: &'a Value, key: &str) -> &'a Value {
        let clauses = read["sentence"]["clauses"].as_array().unwrap();
        let parts = clauses.iter().flat_map(|clause| clause["parts"].as_array().unwrap());
        parts.map(|part| &part["value"]).find(|value| value["key"] == key).unwrap()
    }

    #[test]
    fn a_value_is_set_in_the_text_and_said_in_the_sentence() {
        let (read, before) = edited(
            &json!([{ "set": "zone.ground.volume", "value": "24 yd3" }, { "set": "rakers", "value": "2" }]),
        );
        assert_eq!(read["ok"], true);
        assert_ne!(read["text"], before);
        assert!(read["words"].as_str().unwrap().contains("24 yd3"), "{}", read["words"]);
        assert_eq!(value(&read, "zone.ground.volume")["usual"], false);
        assert_eq!(value(&read, "rakers")["typed"], "2");
        assert_eq!(value(&read, "shift.start")["words"], "08:00");
    }

    #[test]
    fn what_cannot_be_is_told_and_the_text_stays() {
        for edits in [
            json!([{ "set": "zone.ground.volume", "value": "a <b>heap</b>" }]),
            json!([{ "remove": "loader", "name": "loader" }]),
            json!([{ "add": "moon" }]),
        ] {
            let (read, before) = edited(&edits);
            assert_eq!(read["ok"], false, "{edits}");
            assert_eq!(read["text"], before);
            assert_ne!(read["problems"][0]["what"], "");
        }
    }

    #[test]
    fn a_zone_more_and_less_is_the_text_as_it_was() {
        let (read, before) = edited(&json!([{ "add": "zone" }]));
        assert!(read["words"].as_str().unwrap().contains("ground 2"), "{}", read["words"]);
        let (read, _) = edited(&json!([{ "add": "zone" }, { "remove": "zone", "name": "ground 2" }]));
        assert_eq!(read["text"], before);
        let (read, _) = edited(&json!([{ "unset": "shift.start" }]));
        assert_eq!(read["ok"], true);
    }
}
