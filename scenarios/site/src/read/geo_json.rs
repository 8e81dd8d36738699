//! Shapes from GeoJSON (RFC 7946).

use super::ReadError;
use super::map::{Projection, on_earth};
use crate::outline::Outline;
use crate::point::Point;
use geojson::{FeatureCollection, GeoJson, Geometry, GeometryValue, JsonObject, JsonValue, Position};

/// One shape of a text.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn {
    /// The property `name` of its feature, if that is a text.
    pub name: Option<String>,
    /// The feature's other properties that are texts, numbers or yes and no, by name.
    pub properties: Vec<(String, String)>,
    /// The shape in the plane.
    pub shape: DrawnShape,
}

/// A shape of a text.
#[derive(Clone, Debug, PartialEq)]
pub enum DrawnShape {
    /// A place.
    Point(Point),
    /// A line.
    Line(Vec<Point>),
    /// An area, its rings either way round, closed or not.
    Area(Outline),
}

/// The shapes of a GeoJSON text in their order, and the plane they are in: about the first position, if none is given. Of shapes of
/// several parts each part is one. Heights are left out.
///
/// # Errors
///
/// Where the text is no GeoJSON, nothing in it has a place, or a position cannot be right.
///
/// ```
/// let text = r#"{"type": "Feature", "properties": {"name": "pen", "depth": "10 cm"}, "geometry": {"type": "Polygon",
///     "coordinates": [[[8.0, 45.0], [8.001, 45.0], [8.001, 45.001], [8.0, 45.0]]]}}"#;
/// let (shapes, _) = site::from_geojson(text, None).unwrap();
/// assert_eq!(shapes[0].name.as_deref(), Some("pen"));
/// let site::DrawnShape::Area(outline) = &shapes[0].shape else { panic!() };
/// assert!((outline.area() - 78.846_8 * 111.131_8 / 2.0).abs() < 0.1);
/// ```
pub fn from_geojson(
    text: &str,
    projection: Option<Projection>,
) -> Result<(Vec<Drawn>, Projection), ReadError> {
    let no_json = |error: geojson::Error| ReadError::Format { format: "GeoJSON", why: error.to_string() };
    // A mark at the beginning that some programs write.
    let document: GeoJson = text.trim_start_matches('\u{feff}').parse().map_err(no_json)?;
    let mut reader = Reader { projection, number: 0, shapes: Vec::new() };
    match document {
        GeoJson::Geometry(geometry) => reader.geometry(&geometry, None)?,
        GeoJson::Feature(feature) => {
            reader.feature(feature.geometry.as_ref(), feature.properties.as_ref())?
        }
        GeoJson::FeatureCollection(FeatureCollection { features, .. }) => {
            for feature in features {
                reader.feature(feature.geometry.as_ref(), feature.properties.as_ref())?;
            }
        }
    }
    match reader.projection {
        Some(projection) if !reader.shapes.is_empty() => Ok((reader.shapes, projection)),
        _ => Err(ReadError::Empty),
    }
}

struct Reader {
    projection: Option<Projection>,
    /// Positions read so far.
    number: usize,
    shapes: Vec<Drawn>,
}

impl Reader {
    fn feature(
        &mut self,
        geometry: Option<&Geometry>,
        properties: Option<&JsonObject>,
    ) -> Result<(), ReadError> {
        geometry.map_or(Ok(()), |geometry| self.geometry(geometry, properties))
    }

    fn geometry(&mut self, geometry: &Geometry, of: Option<&JsonObject>) -> Result<(), ReadError> {
        match &geometry.value {
            GeometryValue::Point { coordinates } => self.point(coordinates, of),
            GeometryValue::MultiPoint { coordinates } => {
                coordinates.iter().try_for_each(|p| self.point(p, of))
            }
            GeometryValue::LineString { coordinates } => self.line(coordinates, of),
            GeometryValue::MultiLineString { coordinates } => {
                coordinates.iter().try_for_each(|l| self.line(l, of))
            }
            GeometryValue::Polygon { coordinates } => self.area(coordinates, of),
            GeometryValue::MultiPolygon { coordinates } => {
                coordinates.iter().try_for_each(|a| self.area(a, of))
            }
            GeometryValue::GeometryCollection { geometries } => {
                geometries.iter().try_for_each(|geometry| self.geometry(geometry, of))
            }
        }
    }

    fn point(&mut self, position: &Position, of: Option<&JsonObject>) -> Result<(), ReadError> {
        let point = self.position(position)?;
        self.add(DrawnShape::Point(point), of);
        Ok(())
    }

    fn line(&mut self, positions: &[Position], of: Option<&JsonObject>) -> Result<(), ReadError> {
        let line = self.positions(positions)?;
        self.add(DrawnShape::Line(line), of);
        Ok(())
    }

    fn area(&mut self, rings: &[Vec<Position>], of: Option<&JsonObject>) -> Result<(), ReadError> {
        let Some((ring, holes)) = rings.split_first() else { return Ok(()) };
        let mut outline = Outline::from_corners(self.positions(ring)?);
        for hole in holes {
            outline = outline.with_hole(self.positions(hole)?);
        }
        self.add(DrawnShape::Area(outline), of);
        Ok(())
    }

    fn positions(&mut self, positions: &[Position]) -> Result<Vec<Point>, ReadError> {
        positions.iter().map(|position| self.position(position)).collect()
    }

    fn position(&mut self, position: &Position) -> Result<Point, ReadError> {
        self.number += 1;
        let position = (position[0], position[1]);
        on_earth(self.number, position)?;
        let projection = self.projection.get_or_insert(Projection::about(position.0, position.1));
        projection.checked(self.number, position)
    }

    fn add(&mut self, shape: DrawnShape, of: Option<&JsonObject>) {
        let text = |value: &JsonValue| match value {
            JsonValue::String(text) => Some(text.clone()),
            JsonValue::Number(_) | JsonValue::Bool(_) => Some(value.to_string()),
            _ => None,
        };
        let name = of.and_then(|of| of.get("name")).and_then(JsonValue::as_str).map(str::to_owned);
        let others = of.into_iter().flatten().filter(|(key, _)| *key != "name");
        let properties = others.filter_map(|(key, value)| Some((key.clone(), text(value)?))).collect();
        self.shapes.push(Drawn { name, properties, shape });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const AREA: &str = r#"{"type":"Polygon","coordinates":[[[8.0,45.0],[8.001,45.0],[8.001,45.001],[8.0,45.001],[8.0,45.0]],
        [[8.0002,45.0002],[8.0002,45.0004],[8.0004,45.0004]]]}"#;

    #[test]
    fn every_kind_of_shape_is_read_with_its_name_and_properties() {
        let text = format!(
            r#"{{"type":"FeatureCollection","features":[
                {{"type":"Feature","properties":{{"name":"pen","depth":"10 cm","count":3,"is":true,"list":[1]}},"geometry":{AREA}}},
                {{"type":"Feature","properties":null,"geometry":{{"type":"LineString","coordinates":[[8.0,45.0,231.5],[8.002,45.0]]}}}},
                {{"type":"Feature","properties":{{"name":7}},"geometry":null}},
                {{"type":"Feature","properties":{{}},"geometry":{{"type":"GeometryCollection","geometries":[
                    {{"type":"Point","coordinates":[8.0,45.0]}},{{"type":"MultiPolygon","coordinates":[[[[8.0,45.0],[8.01,45.0],[8.0,45.01]]]]}}]}}}}
            ]}}"#
        );
        let (shapes, map) = from_geojson(&text, None).unwrap();
        assert_eq!(shapes.len(), 4);
        assert_eq!(shapes[0].name.as_deref(), Some("pen"));
        let expected = [("count", "3"), ("depth", "10 cm"), ("is", "true")];
        assert_eq!(shapes[0].properties, expected.map(|(key, value)| (key.to_owned(), value.to_owned())));
        let DrawnShape::Area(outline) = &shapes[0].shape else { panic!("{:?}", shapes[0]) };
        assert_eq!((outline.ring.len(), outline.holes.len()), (4, 1));
        assert_eq!(outline.errors(), []);
        assert!(matches!(&shapes[1].shape, DrawnShape::Line(line) if line.len() == 2));
        assert_eq!(shapes[2].shape, DrawnShape::Point(Point::new(0.0, 0.0)));
        assert_eq!(map, Projection::about(8.0, 45.0));
        // In another plane the same shape lies elsewhere.
        let other = from_geojson(AREA, Some(Projection::about(8.001, 45.0))).unwrap().0;
        assert!(matches!(&other[0].shape, DrawnShape::Area(outline) if outline.ring[0].x < -78.0));
    }

    #[test]
    fn what_cannot_be_right_is_told() {
        let why = |text: &str| from_geojson(text, None).unwrap_err().to_string();
        assert!(why("{").starts_with("this is no GeoJSON: "));
        assert!(why(r#"{"type":"Polygon"}"#).starts_with("this is no GeoJSON: "));
        assert!(why(r#"{"type":"Point","coordinates":[8]}"#).starts_with("this is no GeoJSON: "));
        assert_eq!(why(r#"{"type":"FeatureCollection","features":[]}"#), ReadError::Empty.to_string());
        let metres = why(r#"{"type":"LineString","coordinates":[[8.0,45.0],[412345.0,4987654.0]]}"#);
        assert!(metres.starts_with("position 2 is longitude 412345, latitude 4987654; degrees"), "{metres}");
        let far = why(r#"{"type":"LineString","coordinates":[[8.0,45.0],[9.0,45.0]]}"#);
        assert_eq!(far, "position 2 is 79 km from the first; a place of work is within 10 km");
        let deep = "[".repeat(100_000);
        assert!(
            why(&format!(r#"{{"type":"Polygon","coordinates":{deep}"#)).starts_with("this is no GeoJSON: ")
        );
    }
}
