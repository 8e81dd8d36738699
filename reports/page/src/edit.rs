//! Changes of a job's text, its comments kept.

use crate::read::{ReadJson, ToRead};
use crate::refused::{ProblemJson, Refused};
use scenarios::{Edit, edited_with};
use serde::{Deserialize, Serialize};

/// What is to be changed, one thing after the other, and how the job is to be shown then.
#[derive(Debug, Deserialize)]
struct ToEdit {
    edits: Vec<EditJson>,
    #[serde(flatten)]
    read: ToRead,
}

/// One change.
#[derive(Debug, Deserialize)]
#[serde(untagged)]
enum EditJson {
    Set { set: String, value: String },
    Unset { unset: String },
    Add { add: String },
    Remove { remove: String, name: String },
}

impl From<EditJson> for Edit {
    fn from(edit: EditJson) -> Self {
        match edit {
            EditJson::Set { set: key, value } => Self::Set { key, value },
            EditJson::Unset { unset: key } => Self::Unset { key },
            EditJson::Add { add: kind } => Self::Add { kind },
            EditJson::Remove { remove: kind, name } => Self::Remove { kind, name },
        }
    }
}

/// The job with its new text; where something is wrong with that, the text as it was.
#[derive(Debug, Serialize)]
struct EditedJson {
    text: String,
    #[serde(flatten)]
    read: ReadJson,
}

/// Changes a job.
pub(crate) fn edit(asked: &str) -> Result<String, Refused> {
    let ToEdit { edits, mut read } = serde_json::from_str(asked)?;
    let edits: Vec<Edit> = edits.into_iter().map(Edit::from).collect();
    let before = read.job.text.clone();
    let told = match edited_with(&before, &edits, &read.job.texts()) {
        Ok(after) => {
            read.job.text = after;
            read.told()?
        }
        Err(fault) => ReadJson::refused(vec![ProblemJson::from(&fault)]),
    };
    let text = if matches!(told, ReadJson::Read(_)) { read.job.text } else { before };
    Ok(serde_json::to_string(&EditedJson { text, read: told })?)
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
