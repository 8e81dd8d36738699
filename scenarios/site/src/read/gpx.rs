//! Walks from GPX (GPS Exchange Format 1.0 and 1.1).

use super::ReadError;
use super::map::{Projection, on_earth};
use crate::point::Point;
use roxmltree::{Document, Node};

/// One reading of a walk.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fix {
    /// Degrees, -180 to 180.
    pub longitude: f64,
    /// Degrees, -90 to 90.
    pub latitude: f64,
    /// When, in seconds since 1970 (UTC), if the text says so.
    pub time: Option<f64>,
}

/// A track, route or single waypoint of a text.
#[derive(Clone, Debug, PartialEq)]
pub struct Walk {
    /// Its name, if it has one.
    pub name: Option<String>,
    /// Its segments, between which the device saw nothing; of a route one; of a waypoint one of one reading.
    pub segments: Vec<Vec<Fix>>,
}

impl Walk {
    /// All its readings in order.
    pub fn fixes(&self) -> impl Iterator<Item = &Fix> {
        self.segments.iter().flatten()
    }

    /// Its length inside segments, along the ellipsoid, heights left out \[m\].
    pub fn length(&self) -> f64 {
        let leg = |leg: &[Fix]| {
            let map = Projection::about(leg[0].longitude, f64::midpoint(leg[0].latitude, leg[1].latitude));
            let [from, to] = [leg[0], leg[1]].map(|fix| map.point(fix.longitude, fix.latitude));
            from.distance(to)
        };
        self.segments.iter().flat_map(|segment| segment.windows(2)).map(leg).sum()
    }

    /// Its readings in the plane, all segments as one line, and the plane: about its first reading, if none is given. Standing still
    /// gives one point.
    ///
    /// # Errors
    ///
    /// Where it has no readings or goes beyond a place of work.
    pub fn in_plane(&self, projection: Option<Projection>) -> Result<(Vec<Point>, Projection), ReadError> {
        let first = self.fixes().next().ok_or(ReadError::Empty)?;
        let map = projection.unwrap_or(Projection::about(first.longitude, first.latitude));
        let points = self.fixes().enumerate();
        let points = points.map(|(k, fix)| map.checked(k + 1, (fix.longitude, fix.latitude)));
        let mut points = points.collect::<Result<Vec<_>, _>>()?;
        points.dedup();
        Ok((points, map))
    }
}

/// The walks of a GPX text: its tracks and routes, then its waypoints, each in their order.
///
/// # Errors
///
/// Where the text is no GPX, or holds no position, or one that is not on the earth.
///
/// ```
/// let text = r#"<gpx version="1.1"><trk><name>round the pen</name><trkseg>
///     <trkpt lat="45.0" lon="8.0"><time>2026-05-02T08:00:00Z</time></trkpt>
///     <trkpt lat="45.0" lon="8.001"><time>2026-05-02T08:01:10.5+00:00</time></trkpt>
/// </trkseg></trk></gpx>"#;
/// let walks = site::from_gpx(text).unwrap();
/// assert!((walks[0].length() - 78.847).abs() < 1e-3);
/// let times: Vec<f64> = walks[0].fixes().filter_map(|fix| fix.time).collect();
/// assert_eq!(times[1] - times[0], 70.5);
/// ```
pub fn from_gpx(text: &str) -> Result<Vec<Walk>, ReadError> {
    let no_gpx = |why: String| ReadError::Format { format: "GPX", why };
    let document =
        Document::parse(text.trim_start_matches('\u{feff}')).map_err(|error| no_gpx(error.to_string()))?;
    let root = document.root_element();
    if root.tag_name().name() != "gpx" {
        return Err(no_gpx(format!("its outermost element is <{}>, not <gpx>", root.tag_name().name())));
    }
    let mut reader = Reader { number: 0 };
    let mut walks = Vec::new();
    for track in children(root, "trk") {
        let segments = children(track, "trkseg").map(|segment| reader.fixes(segment, "trkpt"));
        walks.push(Walk { name: name(track), segments: segments.collect::<Result<_, _>>()? });
    }
    for route in children(root, "rte") {
        walks.push(Walk { name: name(route), segments: vec![reader.fixes(route, "rtept")?] });
    }
    for point in children(root, "wpt") {
        walks.push(Walk { name: name(point), segments: vec![vec![reader.fix(point)?]] });
    }
    walks.retain(|walk| walk.fixes().next().is_some());
    if walks.is_empty() { Err(ReadError::Empty) } else { Ok(walks) }
}

fn children<'a>(of: Node<'a, 'a>, name: &'static str) -> impl Iterator<Item = Node<'a, 'a>> {
    of.children().filter(move |child| child.is_element() && child.tag_name().name() == name)
}

fn name(of: Node<'_, '_>) -> Option<String> {
    let text = of.children().find(|child| child.is_element() && child.tag_name().name() == "name");
    text.and_then(|child| child.text()).map(|text| text.trim().to_owned()).filter(|text| !text.is_empty())
}

struct Reader {
    /// Positions read so far.
    number: usize,
}

impl Reader {
    fn fixes(&mut self, of: Node<'_, '_>, tag: &'static str) -> Result<Vec<Fix>, ReadError> {
        let is_fix = |child: &Node<'_, '_>| child.is_element() && child.tag_name().name() == tag;
        of.children().filter(is_fix).map(|fix| self.fix(fix)).collect()
    }

    fn fix(&mut self, of: Node<'_, '_>) -> Result<Fix, ReadError> {
        self.number += 1;
        // A figure that is missing or none is told as one that is not on the earth.
        let degrees =
            |name: &str| of.attribute(name).and_then(|text| text.trim().parse().ok()).unwrap_or(f64::NAN);
        let (longitude, latitude) = (degrees("lon"), degrees("lat"));
        on_earth(self.number, (longitude, latitude))?;
        let time = of.children().find(|child| child.is_element() && child.tag_name().name() == "time");
        let time = time.and_then(|child| child.text()).and_then(|text| seconds(text.trim()));
        Ok(Fix { longitude, latitude, time })
    }
}

/// Seconds since 1970 of a time such as `2026-05-02T08:01:10.5Z` or with `+02:00` (ISO 8601 as GPX has it); without a zone, UTC.
fn seconds(text: &str) -> Option<f64> {
    let (date, time) = text.split_once('T')?;
    let mut date = date.splitn(3, '-').map(|part| part.parse::<i64>().ok());
    let (year, month, day) = (date.next()??, date.next()??, date.next()??);
    if !(1..=9999).contains(&year) || !(1..=12).contains(&month) || !(1..=31).contains(&day) {
        return None;
    }
    let (time, zone) = match time.find(['Z', '+', '-']) {
        Some(at) => (&time[..at], &time[at..]),
        None => (time, "Z"),
    };
    let of_day = |text: &str| {
        let mut parts = text.splitn(3, ':').map(|part| part.parse::<f64>().ok().filter(|part| *part >= 0.0));
        let (hours, minutes) = (parts.next()??, parts.next()??);
        Some(hours * 3600.0 + minutes * 60.0 + parts.next().unwrap_or(Some(0.0))?)
    };
    let ahead = match zone.split_at(1) {
        ("Z", "") => 0.0,
        ("+", zone) => of_day(zone)?,
        ("-", zone) => -of_day(zone)?,
        _ => return None,
    };
    Some(days_since_1970(year, month, day) as f64 * 86_400.0 + of_day(time)? - ahead)
}

/// Days since 1 January 1970 of the Gregorian calendar: years from March, so that the leap day comes last.
fn days_since_1970(year: i64, month: i64, day: i64) -> i64 {
    let year = if month <= 2 { year - 1 } else { year };
    let of_year = (153 * ((month + 9) % 12) + 2) / 5 + day - 1;
    year * 365 + year / 4 - year / 100 + year / 400 + of_year - 719_468
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::close;

    #[test]
    fn tracks_routes_and_waypoints_are_read_with_their_names() {
        let text = r#"<?xml version="1.0"?><gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1">
            <wpt lat="45.0" lon="8.0"><name> heap </name></wpt>
            <rte><rtept lat="45.0" lon="8.0"/><rtept lat="45.001" lon="8.0"/></rte>
            <trk><name>a &amp; b</name><trkseg><trkpt lat="45" lon="8"/><trkpt lat="45" lon="8"/></trkseg>
                <trkseg><trkpt lat="45.001" lon="8.001"><ele>231</ele></trkpt></trkseg></trk>
            <trk><trkseg/></trk></gpx>"#;
        let walks = from_gpx(text).unwrap();
        let names: Vec<_> = walks.iter().map(|walk| walk.name.as_deref()).collect();
        assert_eq!(names, [Some("a & b"), None, Some("heap")]);
        // What lies between segments was not walked.
        assert_eq!(walks[0].length(), 0.0);
        close(walks[1].length(), 111.131_8, 1e-3);
        let (points, map) = walks[0].in_plane(None).unwrap();
        assert_eq!(points.len(), 2);
        close(points[1].x, 78.846, 0.01);
        assert_eq!(walks[2].in_plane(Some(map)).unwrap().0, [Point::new(0.0, 0.0)]);
    }

    #[test]
    fn times_count_from_1970_in_every_zone() {
        let at = |text: &str| seconds(text);
        assert_eq!(at("1970-01-01T00:00:00Z"), Some(0.0));
        assert_eq!(at("2000-03-01T12:30:15Z"), Some(951_913_815.0));
        assert_eq!(at("2024-02-29T23:59:59.25Z"), Some(1_709_251_199.25));
        assert_eq!(at("2026-05-02T10:00:00+02:00"), at("2026-05-02T08:00:00Z"));
        assert_eq!(at("2026-05-02T03:30:00-04:30"), at("2026-05-02T08:00:00Z"));
        for none in
            ["", "2026-05-02", "2026-13-02T00:00:00Z", "2026-05-02T00Z", "2026-05-02T-1:00:00Z", "äT€"]
        {
            assert_eq!(at(none), None, "{none}");
        }
    }

    #[test]
    fn what_cannot_be_right_is_told() {
        let why = |text: &str| from_gpx(text).unwrap_err().to_string();
        assert!(why("<gpx>").starts_with("this is no GPX: "));
        assert_eq!(why("<kml/>"), "this is no GPX: its outermost element is <kml>, not <gpx>");
        assert_eq!(why("<gpx><trk/></gpx>"), ReadError::Empty.to_string());
        assert!(
            why(r#"<gpx><wpt lat="95" lon="8"/></gpx>"#)
                .starts_with("position 1 is longitude 8, latitude 95;")
        );
        assert!(why(r#"<gpx><wpt lat="45"/></gpx>"#).starts_with("position 1 is longitude NaN"));
        let far = r#"<gpx><rte><rtept lat="45" lon="8"/><rtept lat="46" lon="8"/></rte></gpx>"#;
        let far = from_gpx(far).unwrap()[0].in_plane(None).unwrap_err();
        assert!(matches!(far, ReadError::TooFarApart { number: 2, .. }));
        // Entities that blow up are not even read.
        assert!(why("<!DOCTYPE gpx [<!ENTITY a \"b\">]><gpx>&a;</gpx>").starts_with("this is no GPX: "));
    }
}
