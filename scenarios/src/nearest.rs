//! The known word nearest to a misspelt one.

/// Longest word that is compared; longer ones have no nearest.
const LONGEST: usize = 60;
/// Least likeness, from 0 to 1.
const ALIKE: f64 = 0.62;

/// The candidate most like the word (Damerau-Levenshtein distance over the longer length), if any is like it at all.
/// Of equals the first.
pub fn nearest<'c>(word: &str, candidates: impl IntoIterator<Item = &'c str>) -> Option<&'c str> {
    if word.chars().count() > LONGEST {
        return None;
    }
    let word = word.to_lowercase();
    let mut best = None;
    for candidate in candidates.into_iter().filter(|c| c.chars().count() <= LONGEST) {
        let alike = strsim::normalized_damerau_levenshtein(&word, &candidate.to_lowercase());
        let shared = word.len() >= 3
            && (candidate.contains(&word) || word.contains(candidate) && candidate.len() >= 3);
        let alike = if shared { alike.max(ALIKE) } else { alike };
        if alike >= ALIKE && best.is_none_or(|(most, _)| alike > most) {
            best = Some((alike, candidate));
        }
    }
    best.map(|(_, candidate)| candidate)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_of_the_fingers_finds_the_word() {
        let keys = ["volume", "area", "depth", "room", "distance"];
        assert_eq!(nearest("volum", keys), Some("volume"));
        assert_eq!(nearest("Detph", keys), Some("depth"));
        assert_eq!(nearest("distence", keys), Some("distance"));
        assert_eq!(nearest("colour", keys), None);
    }

    #[test]
    fn an_endless_word_costs_nothing() {
        assert_eq!(nearest(&"volume".repeat(100_000), ["volume"]), None);
    }

    #[test]
    fn a_part_of_a_name_finds_the_name() {
        assert_eq!(nearest("chips", ["sand", "wood chips"]), Some("wood chips"));
    }
}
