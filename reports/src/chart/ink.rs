//! Every colour of every figure, and the hatchings that tell activities apart without colour.
//!
//! The palette is our own: a blue that darkens with the weight of the work, sand for waiting, greys for what is neither.
//! Fills that can meet in one row differ in lightness (CIE L*) by a step that can be seen or in their hatching, so they stay
//! apart in grey, in print and for colour-blind readers; a test holds them to it.

use super::doing::Doing;
use plotters::style::RGBColor;

/// Background.
pub(super) const PAPER: RGBColor = RGBColor(255, 255, 255);
/// Titles and figures.
pub(super) const TEXT: RGBColor = RGBColor(28, 38, 46);
/// Axis labels and notes.
pub(super) const SOFT_TEXT: RGBColor = RGBColor(74, 88, 99);
/// Axis lines.
pub(super) const AXIS: RGBColor = RGBColor(120, 133, 143);
/// Grid lines.
pub(super) const GRID: RGBColor = RGBColor(222, 228, 232);
/// Breaks.
pub(super) const BREAK: RGBColor = RGBColor(226, 231, 234);
/// Nights.
pub(super) const NIGHT: RGBColor = RGBColor(156, 168, 178);
/// The main thing a figure shows: a curve, a bar, a dot.
pub(super) const MAIN: RGBColor = RGBColor(29, 84, 126);
/// Bars of a histogram.
pub(super) const BAR: RGBColor = RGBColor(62, 126, 174);
/// The range around it.
pub(super) const RANGE: RGBColor = RGBColor(182, 208, 227);
/// What it is to be compared with: the handbook figure.
pub(super) const AGAINST: RGBColor = RGBColor(164, 72, 20);
/// Deliveries.
pub(super) const DELIVERY: RGBColor = RGBColor(92, 58, 20);

/// Least difference in lightness of two fills without different hatchings \[CIE L*, 0 to 100\].
#[cfg(test)]
pub(super) const STEP: f64 = 11.0;

/// Lines or dots over a fill.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Hatch {
    /// None.
    Plain,
    /// Lines from lower left to upper right.
    Rising,
    /// Lines from upper left to lower right.
    Falling,
    /// Upright lines.
    Upright,
    /// Level lines.
    Level,
    /// Lines both ways aslant.
    Crossed,
    /// Lines both ways upright and level.
    Grid,
    /// Dots.
    Dots,
    /// Roof-shaped lines.
    Chevrons,
    /// Small rings.
    Rings,
}

/// How an area is filled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Fill {
    /// Background colour; unlike that of any other fill.
    pub(super) background: RGBColor,
    /// What lies over it.
    pub(super) hatch: Hatch,
    /// Colour of the hatching.
    pub(super) over: RGBColor,
}

/// Over a fill; white on a dark screen too.
const WHITE: RGBColor = RGBColor(255, 255, 254);
const EARTH: RGBColor = RGBColor(112, 66, 14);
const SLATE: RGBColor = RGBColor(96, 106, 114);

const fn fill(background: RGBColor, hatch: Hatch, over: RGBColor) -> Fill {
    Fill { background, hatch, over }
}

/// The fill of an activity.
pub(super) const fn of(doing: Doing) -> Fill {
    match doing {
        Doing::Loading => fill(RGBColor(16, 52, 84), Hatch::Plain, WHITE),
        Doing::Hauling => fill(RGBColor(40, 110, 163), Hatch::Plain, WHITE),
        Doing::Passing => fill(RGBColor(74, 130, 176), Hatch::Upright, WHITE),
        Doing::Dumping => fill(RGBColor(96, 160, 172), Hatch::Plain, WHITE),
        Doing::Returning => fill(RGBColor(160, 198, 226), Hatch::Plain, WHITE),
        Doing::Working => fill(RGBColor(29, 84, 127), Hatch::Plain, WHITE),
        Doing::Raking => fill(RGBColor(62, 98, 46), Hatch::Plain, WHITE),
        Doing::Walking => fill(RGBColor(170, 200, 150), Hatch::Plain, WHITE),
        Doing::WaitingForFace => fill(RGBColor(244, 220, 172), Hatch::Rising, EARTH),
        Doing::WaitingForPass => fill(RGBColor(243, 211, 158), Hatch::Upright, EARTH),
        Doing::WaitingForRoom => fill(RGBColor(242, 196, 134), Hatch::Crossed, EARTH),
        Doing::WaitingForDelivery => fill(RGBColor(246, 228, 194), Hatch::Grid, EARTH),
        Doing::WaitingForHeap => fill(RGBColor(243, 202, 144), Hatch::Chevrons, EARTH),
        Doing::StandingClear => fill(RGBColor(236, 214, 205), Hatch::Rings, EARTH),
        Doing::Stopped => fill(RGBColor(34, 30, 32), Hatch::Dots, WHITE),
        Doing::OnBreak => fill(BREAK, Hatch::Plain, WHITE),
        Doing::SetUp => fill(RGBColor(205, 209, 213), Hatch::Falling, SLATE),
        Doing::CleanUp => fill(RGBColor(206, 210, 214), Hatch::Dots, SLATE),
        Doing::SetUpAndCleanUp => fill(RGBColor(207, 211, 215), Hatch::Falling, SLATE),
        Doing::Done => fill(RGBColor(250, 251, 252), Hatch::Level, NIGHT),
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;

    /// CIE 1976 lightness of an sRGB colour (IEC 61966-2-1 transfer function, Y of D65).
    pub(in crate::chart) fn lightness(RGBColor(r, g, b): RGBColor) -> f64 {
        let linear = |c: u8| {
            let c = f64::from(c) / 255.0;
            if c <= 0.04045 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
        };
        let y = 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
        if y > 216.0 / 24_389.0 { 116.0 * y.cbrt() - 16.0 } else { y * 24_389.0 / 27.0 }
    }

    fn apart(a: Doing, b: Doing) -> bool {
        let (a, b) = (of(a), of(b));
        a.hatch != b.hatch || (lightness(a.background) - lightness(b.background)).abs() >= STEP
    }

    #[test]
    fn activities_that_can_meet_in_a_row_stay_apart_in_grey() {
        for row in
            [Doing::OF_A_LOADER, Doing::OF_A_LOADER_BRIEFLY, Doing::OF_A_RAKER, Doing::OF_A_RAKER_BRIEFLY]
        {
            for (i, a) in row.iter().enumerate() {
                for b in &row[..i] {
                    assert!(
                        apart(*a, *b),
                        "{a:?} {} and {b:?} {}",
                        lightness(of(*a).background),
                        lightness(of(*b).background)
                    );
                }
            }
        }
    }

    #[test]
    fn no_two_kinds_of_waiting_have_the_same_hatching() {
        let waits: Vec<Doing> = Doing::ALL.iter().copied().filter(|doing| doing.is_waiting()).collect();
        assert_eq!(waits.len(), 6);
        for (i, a) in waits.iter().enumerate() {
            assert!(of(*a).hatch != Hatch::Plain);
            assert!(waits[..i].iter().all(|b| of(*a).hatch != of(*b).hatch), "{a:?}");
        }
    }

    #[test]
    fn every_activity_has_its_own_fill() {
        for (i, a) in Doing::ALL.iter().enumerate() {
            for b in &Doing::ALL[..i] {
                assert_ne!(of(*a).background, of(*b).background, "{a:?} and {b:?}");
            }
        }
    }

    #[test]
    fn a_hatching_can_be_seen_on_its_ground() {
        for doing in Doing::ALL {
            let fill = of(*doing);
            let contrast = (lightness(fill.background) - lightness(fill.over)).abs();
            assert!(fill.hatch == Hatch::Plain || contrast > 20.0, "{doing:?}: {contrast}");
        }
    }

    #[test]
    fn text_is_dark_enough_to_read() {
        // Relative luminance contrast of WCAG 2.2, success criterion 1.4.3: at least 4.5 to 1.
        for colour in [TEXT, SOFT_TEXT, MAIN, AGAINST] {
            let y = |l: f64| ((l + 16.0) / 116.0).powi(3);
            assert!((y(lightness(PAPER)) + 0.05) / (y(lightness(colour)) + 0.05) >= 4.5, "{colour:?}");
        }
    }
}
