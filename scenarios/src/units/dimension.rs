//! What a unit measures.

/// Powers of length, mass, time and money in a unit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Dimension {
    length: i8,
    mass: i8,
    time: i8,
    money: i8,
}

impl Dimension {
    pub(crate) const NUMBER: Self = Self { length: 0, mass: 0, time: 0, money: 0 };
    pub(crate) const LENGTH: Self = Self { length: 1, ..Self::NUMBER };
    pub(crate) const AREA: Self = Self { length: 2, ..Self::NUMBER };
    pub(crate) const VOLUME: Self = Self { length: 3, ..Self::NUMBER };
    pub(crate) const MASS: Self = Self { mass: 1, ..Self::NUMBER };
    pub(crate) const TIME: Self = Self { time: 1, ..Self::NUMBER };
    pub(crate) const MONEY: Self = Self { money: 1, ..Self::NUMBER };
    pub(crate) const SPEED: Self = Self { length: 1, time: -1, ..Self::NUMBER };
    pub(crate) const DENSITY: Self = Self { mass: 1, length: -3, ..Self::NUMBER };
    pub(crate) const RATE: Self = Self { length: 3, time: -1, ..Self::NUMBER };
    pub(crate) const TIME_PER_VOLUME: Self = Self { time: 1, length: -3, ..Self::NUMBER };
    pub(crate) const MONEY_PER_TIME: Self = Self { money: 1, time: -1, ..Self::NUMBER };
    pub(crate) const MONEY_PER_VOLUME: Self = Self { money: 1, length: -3, ..Self::NUMBER };
    pub(crate) const PER_TIME: Self = Self { time: -1, ..Self::NUMBER };

    /// The dimension of a quotient.
    pub(crate) fn over(self, below: Self) -> Self {
        Self {
            length: self.length - below.length,
            mass: self.mass - below.mass,
            time: self.time - below.time,
            money: self.money - below.money,
        }
    }

    /// What a person calls it, with its article.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::NUMBER => "a share or plain number",
            Self::LENGTH => "a length",
            Self::AREA => "an area",
            Self::VOLUME => "a volume",
            Self::MASS => "a mass",
            Self::TIME => "a length of time",
            Self::MONEY => "a sum of money",
            Self::SPEED => "a speed",
            Self::DENSITY => "a density",
            Self::RATE => "a volume per time",
            Self::TIME_PER_VOLUME => "a time per volume",
            Self::MONEY_PER_TIME => "a cost per time",
            Self::MONEY_PER_VOLUME => "a price per volume",
            Self::PER_TIME => "a share per time",
            _ => "a mix of units nothing here is measured in",
        }
    }
}
