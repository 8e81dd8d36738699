//! The units of columns.

/// What a column counts in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Unit {
    /// A text, a count or a share.
    None,
    /// Loads.
    Loads,
    /// A length of time \[s\].
    Seconds,
    /// A time of the clock \[s after midnight of the first day\].
    Clock,
    /// \[h\].
    Hours,
    /// In the currency of the row.
    Money,
    /// \[m3\].
    M3,
    /// \[yd3\].
    Yd3,
    /// \[ft3\].
    Ft3,
    /// \[l\].
    Litres,
    /// US gallons.
    Gallons,
}

impl Unit {
    /// Its symbol; empty where there is none that is the same for every row.
    pub(crate) fn symbol(self) -> &'static str {
        match self {
            Self::None | Self::Money => "",
            Self::Loads => "loads",
            Self::Seconds | Self::Clock => "s",
            Self::Hours => "h",
            Self::M3 => "m3",
            Self::Yd3 => "yd3",
            Self::Ft3 => "ft3",
            Self::Litres => "l",
            Self::Gallons => "gal",
        }
    }

    /// What it adds to the heading of a column.
    pub(super) fn suffix(self) -> String {
        match self {
            Self::None | Self::Money | Self::Loads => String::new(),
            _ => format!("_{}", self.symbol()),
        }
    }

    /// Decimals that anybody can use of a figure of one of many runs; all there are where it says none.
    pub(super) fn decimals(self) -> Option<usize> {
        match self {
            Self::None | Self::Loads => None,
            Self::Seconds | Self::Clock => Some(1),
            Self::Money => Some(2),
            Self::Hours | Self::M3 | Self::Yd3 | Self::Ft3 | Self::Litres | Self::Gallons => Some(3),
        }
    }

    /// Whether it says in US units what another column says in metric ones.
    pub(super) fn is_us(self) -> bool {
        matches!(self, Self::Yd3 | Self::Ft3 | Self::Gallons)
    }
}
