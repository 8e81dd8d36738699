//! One table of a file, read key by key.

use crate::document::{Node, Table, Value};
use crate::ledger::{At, Ledger, Place};
use crate::nearest::nearest;
use crate::raw;
use crate::signs;
use crate::units::amount::{self, Amount, AmountError};
use crate::units::dimension::Dimension;
use crate::units::kind::{Kind, Zero};
use crate::units::{self, System, volume_number};
use std::ops::RangeInclusive;

/// What is less, but not zero, cannot be reckoned with, in whatever unit it is kept.
const NEXT_TO_NOTHING: f64 = 1e-9;
/// Longest name of a thing \[characters\].
const LONGEST_NAME: usize = 80;

/// A table whose keys are known.
pub(crate) struct Fields<'d> {
    table: &'d Table,
    /// Where it stands.
    pub(crate) place: Place,
    /// Known keys that a misspelt key probably stands for.
    mistaken: Vec<String>,
}

/// A value under a key.
#[derive(Clone)]
pub(crate) struct Item<'d> {
    /// The value.
    pub(crate) node: &'d Node,
    /// Where it stands.
    pub(crate) place: Place,
}

impl<'d> Fields<'d> {
    /// Opens a table; every key that is not among the known ones is a problem.
    pub(crate) fn open(table: &'d Table, place: Place, known: &[&str], ledger: &mut Ledger<'_>) -> Self {
        let mut mistaken = Vec::new();
        for (key, entry) in table.in_order() {
            if known.contains(&key) {
                continue;
            }
            let near = nearest(key, known.iter().copied());
            let right = match (raw::instead_of(key), raw::home_of(key), near) {
                (Some(right), ..) => right.to_owned(),
                (None, Some(home), _) => format!("this key belongs {home}"),
                (None, None, Some(near)) => format!("the nearest known key is \"{near}\""),
                (None, None, None) => format!("known keys are {}", known.join(", ")),
            };
            mistaken.extend(near.map(str::to_owned));
            let shown = printable(key);
            ledger.problem(&place.key(&shown).at(&entry.key_span), "", "this key is not known", right);
        }
        Self { table, place, mistaken }
    }

    /// Opens a value that must be a table.
    pub(crate) fn of(item: &Item<'d>, known: &[&str], ledger: &mut Ledger<'_>) -> Option<Self> {
        match &item.node.value {
            Value::Table(table) => {
                Some(Self::open(table, item.place.clone().at(&item.node.span), known, ledger))
            }
            other => {
                let what = format!("this is {}, where a table is wanted", other.name());
                let right = format!("give it keys of its own: {}", known.join(", "));
                ledger.wrong(&item.place, item.node, what, right);
                None
            }
        }
    }

    /// The value under a key, if any.
    pub(crate) fn get(&self, key: &str) -> Option<Item<'d>> {
        let entry = self.table.entries.get(key)?;
        let place = self.place.key(key).at(&entry.node.span);
        Some(Item { node: &entry.node, place })
    }

    /// The value under a key that must be there. Nothing is said if a misspelt key probably stands for it.
    pub(crate) fn need(&self, key: &str, right: &str, ledger: &mut Ledger<'_>) -> Option<Item<'d>> {
        let found = self.get(key);
        if found.is_none() && !self.mistaken.iter().any(|other| other == key) {
            ledger.problem(&self.place, "", format!("\"{key}\" is missing"), right);
        }
        found
    }

    /// Whether a key is given, be it misspelt.
    pub(crate) fn has(&self, key: &str) -> bool {
        self.table.entries.contains_key(key) || self.mistaken.iter().any(|other| other == key)
    }

    /// A text under a key.
    pub(crate) fn text(&self, key: &str, ledger: &mut Ledger<'_>) -> Option<At<String>> {
        self.get(key)?.text("write it in quotes", ledger)
    }

    /// A quantity under a key that is one figure.
    pub(crate) fn figure(&self, key: &str, kind: Kind, ledger: &mut Ledger<'_>) -> Option<At<f64>> {
        self.get(key)?.figure(kind, ledger)
    }

    /// A count under a key.
    pub(crate) fn count(
        &self,
        key: &str,
        limits: RangeInclusive<u32>,
        ledger: &mut Ledger<'_>,
    ) -> Option<At<u32>> {
        self.get(key)?.count(limits, ledger)
    }

    /// A yes or no under a key.
    pub(crate) fn truth(&self, key: &str, ledger: &mut Ledger<'_>) -> Option<At<bool>> {
        let item = self.get(key)?;
        match item.node.value {
            Value::Truth(truth) => Some(item.at(truth)),
            _ => {
                item.wrong("this is neither true nor false", "write true or false, without quotes", ledger);
                None
            }
        }
    }
}

impl<'d> Item<'d> {
    /// A value read from it.
    pub(crate) fn at<T>(&self, value: T) -> At<T> {
        At { value, place: self.place.clone().at(&self.node.span), typed: self.node.typed.clone() }
    }

    /// A problem of it.
    pub(crate) fn wrong(&self, what: impl Into<String>, right: impl Into<String>, ledger: &mut Ledger<'_>) {
        ledger.wrong(&self.place, self.node, what, right);
    }

    /// A text that is not empty.
    pub(crate) fn text(&self, right: &str, ledger: &mut Ledger<'_>) -> Option<At<String>> {
        match &self.node.value {
            Value::Text(text) if text.trim().is_empty() => {
                self.wrong("nothing is written here", right, ledger)
            }
            Value::Text(text) if text.chars().count() > LONGEST_NAME => {
                let right = format!("write at most {LONGEST_NAME} characters");
                self.wrong("this is too long", right, ledger);
            }
            Value::Text(text) => match signs::first_hidden(text.trim()) {
                None => return Some(self.at(signs::composed(text.trim()))),
                Some(sign) => {
                    let what = format!("this has a sign in it that cannot be seen ({sign})");
                    self.wrong(what, "type it again on one line, with signs that can be seen", ledger);
                }
            },
            other => {
                self.wrong(format!("this is {}, where a text is wanted", other.name()), right, ledger);
            }
        }
        None
    }

    /// One of a few words.
    pub(crate) fn word<T: Copy>(&self, words: &[(&str, T)], ledger: &mut Ledger<'_>) -> Option<At<T>> {
        let all = words.iter().map(|(word, _)| format!("\"{word}\"")).collect::<Vec<_>>().join(", ");
        let text = self.text(&format!("write one of {all}"), ledger)?;
        let found = words.iter().find(|(word, _)| word.eq_ignore_ascii_case(&text.value));
        if found.is_none() {
            let right = match nearest(&text.value, words.iter().map(|(word, _)| *word)) {
                Some(near) => format!("the nearest is \"{near}\"; all are {all}"),
                None => format!("write one of {all}"),
            };
            self.wrong("this word is not known here", right, ledger);
        }
        found.map(|(_, value)| self.at(*value))
    }

    /// A count within limits.
    pub(crate) fn count(&self, limits: RangeInclusive<u32>, ledger: &mut Ledger<'_>) -> Option<At<u32>> {
        let (least, most) = (limits.start(), limits.end());
        let right = format!("write a whole number from {least} to {most}, without quotes");
        match &self.node.value {
            Value::Whole(count) => match u32::try_from(*count) {
                Ok(count) if limits.contains(&count) => return Some(self.at(count)),
                _ if *count == 0 => self.wrong("none at all is not a count", right, ledger),
                _ if *count < 0 => self.wrong("this is less than nothing", right, ledger),
                _ => self.wrong("this is absurdly many", right, ledger),
            },
            other => self.wrong(format!("this is {}, where a count is wanted", other.name()), right, ledger),
        }
        None
    }

    /// A quantity as one figure, in the unit its kind is kept in.
    pub(crate) fn figure(&self, kind: Kind, ledger: &mut Ledger<'_>) -> Option<At<f64>> {
        if matches!(self.node.value, Value::Table(_)) {
            let right = format!("write one figure, such as {}", kind.facts().example);
            self.wrong("a range or a distribution is not taken here", right, ledger);
            return None;
        }
        let value = self.measure(kind, ledger)?;
        self.believable(value, kind, ledger).then(|| self.at(value))
    }

    /// A quantity of the right dimension, believable or not, in the unit its kind is kept in.
    pub(crate) fn measure(&self, kind: Kind, ledger: &mut Ledger<'_>) -> Option<f64> {
        let facts = kind.facts();
        let wanted = facts.dimension;
        let such = format!("{} is wanted, such as {}", wanted.name(), facts.example);
        let read = match &self.node.value {
            Value::Text(text) => amount::parse(text),
            Value::Whole(number) => Ok(amount::bare(*number as f64)),
            Value::Number(number) if number.is_finite() => Ok(amount::bare(*number)),
            Value::Number(_) => Err(AmountError::NotFinite),
            other => {
                self.wrong(format!("this is {}", other.name()), such, ledger);
                return None;
            }
        };
        let amount = match read {
            Ok(amount) if amount.dimension == wanted => amount,
            Ok(amount) if by_the_ton(kind, &amount) => return self.by_the_ton(&amount, kind, ledger),
            Ok(amount) => {
                let what = mismatch(&amount, wanted);
                self.wrong(what, such, ledger);
                return None;
            }
            Err(error) => {
                self.wrong(error.what(), such, ledger);
                return None;
            }
        };
        ledger.saw_unit(amount.system);
        if let Some(currency) = &amount.currency {
            ledger.saw_currency(&self.place, self.node, currency);
        }
        Some(amount.in_units_of((facts.kept_in)()))
    }

    /// What is counted or paid by the ton, by volume: by the density of the material, which is said.
    fn by_the_ton(&self, amount: &Amount, kind: Kind, ledger: &mut Ledger<'_>) -> Option<f64> {
        let facts = kind.facts();
        let Some(density) = ledger.density else {
            let right = format!(
                "give density under [material], as in \"1500 kg/m3\", or write {} such as {}",
                facts.dimension.name(),
                facts.example
            );
            self.wrong("tons are turned into a volume by the density, which is not known", right, ledger);
            return None;
        };
        let value = amount.by_volume(facts.dimension, density)?;
        let currency = amount.currency.as_deref().unwrap_or_default();
        let show = |system: System| match kind {
            Kind::PricePerVolume => {
                let (unit, size) =
                    if system == System::Us { ("yd3", volume_number(1.0, system).0) } else { ("m3", 1.0) };
                format!("{}/{unit}", units::money(value / size, currency))
            }
            _ => units::volume(value, system),
        };
        let words =
            format!("{} is taken as {} ({})", self.node.typed, show(System::Metric), show(System::Us));
        let weighs = [System::Metric, System::Us].map(|system| units::density(density, system));
        ledger.assume(
            &self.place.path,
            words,
            format!("by the material's density, {} ({})", weighs[0], weighs[1]),
        );
        ledger.saw_unit(amount.system);
        if let Some(currency) = &amount.currency {
            ledger.saw_currency(&self.place, self.node, currency);
        }
        Some(value / (facts.kept_in)())
    }

    /// Whether a value lies within what is believable for its kind; if not, that is a problem.
    pub(crate) fn believable(&self, value: f64, kind: Kind, ledger: &mut Ledger<'_>) -> bool {
        let facts = kind.facts();
        let [low, high] = facts.limits;
        let range = format!("it may be from {low} to {high}, such as {}", facts.example);
        let what = if !value.is_finite() {
            "this is not a finite number"
        } else if value < 0.0 {
            "this is less than nothing"
        } else if value == 0.0 && facts.zero == Zero::Refused {
            "this may not be zero"
        } else if value < facts.least || value > 0.0 && value < NEXT_TO_NOTHING {
            "this is absurdly small"
        } else if value > facts.greatest * (1.0 + 1e-12) {
            "this is absurdly large"
        } else {
            return true;
        };
        self.wrong(what, range, ledger);
        false
    }
}

/// Whether a kind of volume or price is also given by the ton.
fn by_the_ton(kind: Kind, amount: &Amount) -> bool {
    match kind {
        Kind::Volume | Kind::Delivery => amount.is_in_tons(),
        Kind::PricePerVolume => amount.by_volume(Dimension::MONEY_PER_VOLUME, 1.0).is_some(),
        _ => false,
    }
}

fn mismatch(amount: &Amount, wanted: Dimension) -> String {
    if amount.dimension == Dimension::NUMBER {
        let money = [Dimension::MONEY, Dimension::MONEY_PER_TIME, Dimension::MONEY_PER_VOLUME];
        return if money.contains(&wanted) {
            "the currency is missing".into()
        } else {
            AmountError::NoUnit.what()
        };
    }
    let what = format!("this is {}", amount.dimension.name());
    match (amount.dimension, wanted) {
        (Dimension::LENGTH, Dimension::VOLUME) => {
            format!("{what} (a \"yard\" of material is a cubic yard, written yd3)")
        }
        (Dimension::LENGTH, Dimension::TIME) => format!("{what} (m is for metres, minutes are written min)"),
        _ => what,
    }
}

/// A text fit to be shown in a message: cut short, what cannot be seen written as its code point.
pub(crate) fn printable(text: &str) -> String {
    let cut: String = text.chars().take(LONGEST_NAME).collect();
    signs::escaped(&cut)
}
