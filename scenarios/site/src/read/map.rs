//! From longitude and latitude to a flat plane about a place.

use super::ReadError;
use crate::point::Point;
use std::f64::consts::PI;

/// Half the long axis of the ellipsoid WGS 84 \[m\], and its eccentricity squared.
const AXIS: f64 = 6_378_137.0;
const ECCENTRICITY2: f64 = 0.006_694_379_990_141_317;
/// A place of work is not larger than this \[m\].
const FARTHEST: f64 = 10_000.0;

/// A flat plane that touches the earth (WGS 84) at one place: x to the east, y to the north. Distances are right to 1 mm in places of
/// 2 km, to 2 cm in places of 10 km.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Projection {
    longitude: f64,
    latitude: f64,
}

impl Projection {
    /// About a place \[degrees, -180 to 180 and -90 to 90, poles excluded\].
    pub fn about(longitude: f64, latitude: f64) -> Self {
        Self { longitude, latitude }
    }

    /// Metres to a degree of longitude and to one of latitude at its place.
    ///
    /// ```
    /// let (along, up) = site::Projection::about(0.0, 45.0).metres_per_degree();
    /// assert!((along - 78_846.835_09).abs() < 1e-4 && (up - 111_131.777_4).abs() < 1e-4);
    /// ```
    pub fn metres_per_degree(&self) -> (f64, f64) {
        let latitude = self.latitude * PI / 180.0;
        let (across, along) = radii(latitude);
        (PI / 180.0 * across * libm::cos(latitude), PI / 180.0 * along)
    }

    /// A position in the plane \[m\].
    pub fn point(&self, longitude: f64, latitude: f64) -> Point {
        // Round the far side of the earth is the short way there.
        let mut degrees = longitude - self.longitude;
        if degrees > 180.0 {
            degrees -= 360.0;
        } else if degrees < -180.0 {
            degrees += 360.0;
        }
        let (own, here) = (self.latitude * PI / 180.0, latitude * PI / 180.0);
        let (across, _) = radii(here);
        let (_, along) = radii(f64::midpoint(own, here));
        let turn = degrees * PI / 180.0;
        let (sin, cos) = (libm::sin(here), libm::cos(here));
        // The transverse Mercator map to second order: parallels are bent.
        Point::new(turn * across * cos, (here - own) * along + turn * turn * across * sin * cos / 2.0)
    }

    /// A position of a text, by its number from 1, in the plane.
    pub(crate) fn checked(&self, number: usize, position: (f64, f64)) -> Result<Point, ReadError> {
        let point = self.point(position.0, position.1);
        let apart = point.length();
        if apart <= FARTHEST {
            Ok(point)
        } else {
            Err(ReadError::TooFarApart { number, apart: apart / 1000.0 })
        }
    }
}

/// That a position is on the earth.
pub(crate) fn on_earth(number: usize, (longitude, latitude): (f64, f64)) -> Result<(), ReadError> {
    let is_right = longitude.abs() <= 180.0 && latitude.abs() <= 90.0;
    if is_right { Ok(()) } else { Err(ReadError::OffTheEarth { number, longitude, latitude }) }
}

/// The radii of curvature across and along the meridian at a latitude \[m\].
fn radii(latitude: f64) -> (f64, f64) {
    let sin = libm::sin(latitude);
    let part = 1.0 - ECCENTRICITY2 * sin * sin;
    let root = libm::sqrt(part);
    (AXIS / root, AXIS * (1.0 - ECCENTRICITY2) / (part * root))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{Draw, close};

    /// The straight line between two positions through the earth: a few micrometres shorter than the way over it.
    fn chord(a: (f64, f64), b: (f64, f64)) -> f64 {
        let place = |(longitude, latitude): (f64, f64)| {
            let (longitude, latitude) = (longitude * PI / 180.0, latitude * PI / 180.0);
            let (across, _) = radii(latitude);
            let off_axis = across * latitude.cos();
            let up = across * (1.0 - ECCENTRICITY2) * latitude.sin();
            [off_axis * longitude.cos(), off_axis * longitude.sin(), up]
        };
        let (a, b) = (place(a), place(b));
        (0..3).map(|k| (a[k] - b[k]) * (a[k] - b[k])).sum::<f64>().sqrt()
    }

    #[test]
    fn distances_are_those_of_the_ellipsoid() {
        let mut draw = Draw::new(41);
        for (degrees, within) in [(0.009, 1e-3), (0.045, 2e-2)] {
            for _ in 0..500 {
                let about = (draw.between(-180.0, 180.0), draw.between(-65.0, 65.0));
                let map = Projection::about(about.0, about.1);
                let mut position = || {
                    let stretch = (about.1 * PI / 180.0).cos();
                    let up = about.1 + draw.between(-degrees, degrees);
                    (about.0 + draw.between(-degrees, degrees) / stretch, up)
                };
                let (a, b) = (position(), position());
                let flat = map.point(a.0, a.1).distance(map.point(b.0, b.1));
                close(flat, chord(a, b), within);
            }
        }
    }

    #[test]
    fn east_is_to_the_right_and_north_is_up_on_either_side_of_the_date_line() {
        let map = Projection::about(179.999, 10.0);
        let east = map.point(-179.999, 10.0);
        assert!(east.x > 200.0 && east.x < 230.0 && east.y.abs() < 0.01, "{east:?}");
        let north = map.point(179.999, 10.001);
        close(north.x, 0.0, 1e-9);
        close(north.y, 110.6, 0.1);
    }
}
