//! Labels that move apart when what they name lies close together.

/// A label that wants to stand centred above a point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Wanted {
    /// Where its middle would best be \[px\].
    pub(super) centre: f64,
    /// How wide it is \[px\].
    pub(super) width: f64,
}

/// Where a label stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Placed {
    /// Its left edge \[px\].
    pub(super) left: f64,
    /// Which row, counted from the top.
    pub(super) row: usize,
}

/// Labels that had to share the room: they stand edge to edge, moved as little as possible as a whole.
struct Group {
    first: usize,
    left: f64,
    width: f64,
    /// Sum and number of the left edges the members would like the group to have.
    wishes: f64,
    members: f64,
}

/// Places labels side by side between `from` and `to` with `gap` between them; where one row is too short, each label
/// gets a row of its own. The answer is in the order of `wanted`.
pub(super) fn spread(wanted: &[Wanted], from: f64, to: f64, gap: f64) -> Vec<Placed> {
    let total: f64 = wanted.iter().map(|w| w.width + gap).sum::<f64>() - gap;
    if total > to - from {
        return wanted
            .iter()
            .enumerate()
            .map(|(row, w)| Placed { left: within(w.centre - w.width / 2.0, w.width, from, to), row })
            .collect();
    }
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    order.sort_by(|a, b| wanted[*a].centre.total_cmp(&wanted[*b].centre));
    let mut groups: Vec<Group> = Vec::new();
    for (place, label) in order.iter().map(|i| wanted[*i]).enumerate() {
        let mut group = Group {
            first: place,
            left: within(label.centre - label.width / 2.0, label.width, from, to),
            width: label.width,
            wishes: label.centre - label.width / 2.0,
            members: 1.0,
        };
        while let Some(before) = groups.pop_if(|b| b.left + b.width + gap > group.left) {
            group = Group {
                first: before.first,
                left: 0.0,
                wishes: before.wishes + group.wishes - group.members * (before.width + gap),
                members: before.members + group.members,
                width: before.width + gap + group.width,
            };
            group.left = within(group.wishes / group.members, group.width, from, to);
        }
        groups.push(group);
    }
    let mut placed = vec![Placed { left: from, row: 0 }; wanted.len()];
    for (g, group) in groups.iter().enumerate() {
        let end = groups.get(g + 1).map_or(order.len(), |next| next.first);
        let mut left = group.left;
        for i in &order[group.first..end] {
            placed[*i].left = left;
            left += wanted[*i].width + gap;
        }
    }
    placed
}

/// A left edge such that the box lies between the two bounds, the left one first.
fn within(left: f64, width: f64, from: f64, to: f64) -> f64 {
    left.min(to - width).max(from)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn labels(centres: &[f64]) -> Vec<Wanted> {
        centres.iter().map(|centre| Wanted { centre: *centre, width: 100.0 }).collect()
    }

    #[test]
    fn labels_with_room_stand_where_they_want() {
        let placed = spread(&labels(&[100.0, 400.0, 250.0]), 0.0, 500.0, 8.0);
        assert_eq!(placed.iter().map(|p| p.left).collect::<Vec<_>>(), [50.0, 350.0, 200.0]);
    }

    #[test]
    fn labels_of_close_percentiles_move_apart_evenly_and_keep_their_order() {
        let placed = spread(&labels(&[250.0, 252.0, 254.0]), 0.0, 500.0, 8.0);
        let lefts: Vec<f64> = placed.iter().map(|p| p.left).collect();
        assert_eq!(lefts, [94.0, 202.0, 310.0]);
        assert!(placed.iter().all(|p| p.row == 0));
    }

    #[test]
    fn labels_near_an_edge_stay_inside() {
        let placed = spread(&labels(&[490.0, 495.0]), 0.0, 500.0, 8.0);
        assert_eq!(placed.iter().map(|p| p.left).collect::<Vec<_>>(), [292.0, 400.0]);
        let placed = spread(&labels(&[0.0, 5.0]), 0.0, 500.0, 8.0);
        assert_eq!(placed.iter().map(|p| p.left).collect::<Vec<_>>(), [0.0, 108.0]);
    }

    #[test]
    fn labels_too_wide_for_one_row_get_rows_of_their_own() {
        let placed = spread(&labels(&[20.0, 60.0, 100.0]), 0.0, 250.0, 8.0);
        assert_eq!(placed.iter().map(|p| p.row).collect::<Vec<_>>(), [0, 1, 2]);
        assert!(placed.iter().all(|p| p.left >= 0.0 && p.left + 100.0 <= 250.0));
    }
}
