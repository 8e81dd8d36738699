//! Tables. One of many columns becomes a list of cards on a phone, every figure beside its heading.

use maud::{Markup, html};

/// Most columns a phone shows side by side.
const SIDE_BY_SIDE: usize = 4;

/// A table with one heading for each column.
pub(crate) struct Table {
    caption: Option<String>,
    heads: Vec<String>,
    rows: Vec<Row>,
    foot: Vec<Row>,
}

/// A row: its heading and its cells.
pub(crate) struct Row {
    class: Option<&'static str>,
    head: Markup,
    cells: Vec<Markup>,
    wide: bool,
}

impl Row {
    pub(crate) fn new(head: Markup, cells: impl IntoIterator<Item = Markup>) -> Self {
        Self { class: None, head, cells: cells.into_iter().collect(), wide: false }
    }

    /// A row with one cell over all columns.
    pub(crate) fn wide(head: Markup, cell: Markup) -> Self {
        Self { wide: true, ..Self::new(head, [cell]) }
    }

    /// In bold, if it is the one to look at.
    pub(crate) fn plan(self, is_plan: bool) -> Self {
        Self { class: is_plan.then_some("plan-row"), ..self }
    }
}

impl Table {
    pub(crate) fn new<S: Into<String>>(heads: impl IntoIterator<Item = S>) -> Self {
        let heads = heads.into_iter().map(Into::into).collect();
        Self { caption: None, heads, rows: Vec::new(), foot: Vec::new() }
    }

    pub(crate) fn caption(self, caption: impl Into<String>) -> Self {
        Self { caption: Some(caption.into()), ..self }
    }

    pub(crate) fn rows(self, rows: impl IntoIterator<Item = Row>) -> Self {
        Self { rows: rows.into_iter().collect(), ..self }
    }

    pub(crate) fn foot(self, rows: impl IntoIterator<Item = Row>) -> Self {
        Self { foot: rows.into_iter().collect(), ..self }
    }

    /// The roles are those the elements have by themselves: some browsers take them away where a style shows rows as cards.
    pub(crate) fn draw(&self) -> Markup {
        let class = if self.heads.len() > SIDE_BY_SIDE { "short stack" } else { "short" };
        html! {
            table class=(class) role="table" {
                @if let Some(caption) = &self.caption { caption { (caption) } }
                thead role="rowgroup" { tr role="row" { @for head in &self.heads {
                    @if head.is_empty() { td role="cell" {} } @else { th scope="col" role="columnheader" { (head) } }
                } } }
                tbody role="rowgroup" { @for row in &self.rows { (self.row(row)) } }
                @if !self.foot.is_empty() {
                    tfoot role="rowgroup" { @for row in &self.foot { (self.row(row)) } }
                }
            }
        }
    }

    fn row(&self, row: &Row) -> Markup {
        let heads = self.heads.iter().skip(1);
        html! {
            tr.(row.class.unwrap_or_default()) role="row" {
                th scope="row" role="rowheader" { (row.head) }
                @if row.wide {
                    @for cell in &row.cells { td role="cell" colspan=(self.heads.len() - 1) { (cell) } }
                } @else {
                    @for (head, cell) in heads.zip(&row.cells) { (filled(head, cell)) }
                }
            }
        }
    }
}

/// A cell with the heading of its column; one without anything in it has none.
fn filled(head: &str, cell: &Markup) -> Markup {
    html! {
        @if cell.0.is_empty() { td role="cell" {} } @else { td role="cell" data-head=(head) { span { (cell) } } }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn drawn(columns: usize) -> String {
        let heads = (0..columns).map(|i| if i == 0 { String::new() } else { format!("<{i}>") });
        let cells = (1..columns).map(|i| html! { (i) });
        Table::new(heads)
            .rows([Row::new(html! { "a" }, cells), Row::wide(html! { "b" }, html! { "all" })])
            .draw()
            .into_string()
    }

    #[test]
    fn every_cell_bears_the_heading_of_its_column() {
        let html = drawn(3);
        assert!(
            html.contains("data-head=\"&lt;1&gt;\"><span>1</span></td>")
                && html.contains("data-head=\"&lt;2&gt;\"><span>2</span></td>"),
            "{html}"
        );
        assert!(html.contains("colspan=\"2\">all</td>"), "{html}");
    }

    #[test]
    fn a_column_without_a_heading_has_no_empty_heading() {
        assert!(drawn(3).contains("<tr role=\"row\"><td role=\"cell\"></td><th scope=\"col\""));
    }

    #[test]
    fn only_tables_too_wide_for_a_phone_become_cards() {
        assert!(
            !drawn(SIDE_BY_SIDE).contains("stack")
                && drawn(SIDE_BY_SIDE + 1).contains("class=\"short stack\"")
        );
    }
}
