//! A text as a square of dots that a camera reads (QR code, ISO/IEC 18004), drawn as SVG.

use crate::refused::Refused;
use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};
use std::fmt::Write;

/// Clear dots around it, as the standard wants.
const MARGIN: i32 = 4;

/// The largest code that is drawn, 117 dots a side: on the screen of a phone a dot of a larger one is less than 2.5 pixels wide.
const LARGEST: u8 = 25;

/// The drawing.
pub(crate) fn qr(text: &str) -> Result<String, Refused> {
    let segments = QrSegment::make_segments(text);
    let largest = Version::new(LARGEST);
    let code = QrCode::encode_segments_advanced(&segments, QrCodeEcc::Low, Version::MIN, largest, None, true);
    let code = code.map_err(|_| {
        let words = "this is too long for a code that a camera can read; send the link or the file";
        Refused::Message(words.to_owned())
    })?;
    let size = code.size();
    let mut dots = String::new();
    for y in 0..size {
        let mut x = 0;
        while x < size {
            let length = (x..size).take_while(|x| code.get_module(*x, y)).count() as i32;
            if length > 0 {
                // Writing to a string cannot fail.
                let _ = write!(dots, "M{} {}h{length}v1h-{length}z", x + MARGIN, y + MARGIN);
            }
            x += length + 1;
        }
    }
    let side = size + 2 * MARGIN;
    Ok(format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {side} {side}\" shape-rendering=\"crispEdges\">\
         <path fill=\"#fff\" d=\"M0 0h{side}v{side}H0z\"/><path fill=\"#000\" d=\"{dots}\"/></svg>"
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The dots of a drawing, counted from its path alone.
    fn dots(svg: &str) -> usize {
        let path = svg.rsplit_once("d=\"").unwrap().1.split('"').next().unwrap();
        path.split('h')
            .skip(1)
            .step_by(2)
            .map(|run| run.split('v').next().unwrap().parse::<usize>().unwrap())
            .sum()
    }

    #[test]
    fn every_dark_dot_of_the_code_is_drawn_once() {
        let text = "https://example.org/heapcast/#1.abc_DEF-123";
        let code = QrCode::encode_text(text, QrCodeEcc::Low).unwrap();
        let dark = |y: i32| (0..code.size()).filter(|x| code.get_module(*x, y)).count();
        let svg = qr(text).unwrap();
        assert_eq!(dots(&svg), (0..code.size()).map(dark).sum::<usize>());
        assert!(svg.contains(&format!("viewBox=\"0 0 {0} {0}\"", code.size() + 8)), "{svg:.120}");
    }

    #[test]
    fn what_no_camera_could_read_is_refused_in_words() {
        assert!(qr(&"a".repeat(1_273)).is_ok());
        assert!(matches!(qr(&"a".repeat(1_274)), Err(Refused::Message(words)) if words.contains("too long")));
    }
}
