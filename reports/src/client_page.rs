//! `client.html`: one sheet for the client, without costs, risk or margin: nothing of a quote reaches it but what is asked for.

mod findings;

pub use findings::{ClientSays, Terms, client};

use crate::findings::capital;
use crate::render::page::frame::frame;
use crate::render::page::words::tight;
use maud::{Markup, html};

/// The page for the client.
pub fn client_page(says: &ClientSays) -> String {
    frame(
        &says.title,
        html! {
            div.client {
                header {
                    h1 { (says.title) }
                    p.soft { "Quote, reference " (says.reference) }
                }
                div.lines { (blank("From")) (blank("For")) (blank("Where")) (blank("Valid until")) }
                (work(says))
                (when(says))
                (price(says))
                (list("Please see to this", &says.see_to))
                (list("What may change the price", &says.may_change))
                p { "Whatever changes it, we talk before we go on." }
                (agreed())
            }
        },
    )
}

fn blank(what: &str) -> Markup {
    html! { p.fill-in { span { (what) } } }
}

fn work(says: &ClientSays) -> Markup {
    html! {
        section id="work" {
            h2 { "What is done" }
            p { (tight(&capital(&says.what))) }
            @if let Some(missing) = &says.missing { p.heed { (tight(missing)) } }
            ul.ground { @for line in &says.ground { li { (tight(line)) } } }
        }
    }
}

fn when(says: &ClientSays) -> Markup {
    html! {
        section id="when" {
            h2 { "When" }
            @if let Some(date) = &says.date {
                p { (date) ", from " (tight(&says.start)) " on." }
            } @else {
                div.lines { (blank("Date")) }
                p { "From " (tight(&says.start)) " on." }
            }
            p {
                @if says.missing.is_some() { "What is ordered is spread " } @else { "Done " }
                (tight(&says.done)) ". A bad day can make it later."
            }
        }
    }
}

fn price(says: &ClientSays) -> Markup {
    html! {
        section id="price" {
            h2 { "Price" }
            @match &says.terms {
                Terms::Fixed { price } => {
                    p.big { span { (price) } }
                }
                Terms::Hourly { hours, rate, sums, limit } => {
                    p.plan { (tight(hours)) " hours at " (rate) ": " (tight(sums)) "." }
                    p.plan { "Not more than " (limit) " without asking you first." }
                }
            }
            p { (says.included) }
            div.lines {
                @if says.material_besides { (blank("Material, brought here")) }
                (blank("Taxes"))
            }
            p.note { "Permits, and taking anything away, are not in it unless written here." }
        }
    }
}

fn list(heading: &str, items: &[String]) -> Markup {
    html! {
        section {
            h2 { (heading) }
            ul { @for item in items { li { (tight(item)) } } }
        }
    }
}

fn agreed() -> Markup {
    html! {
        section id="agreed" {
            h2 { "Agreed" }
            div.lines { (blank("For us, name and date")) (blank("Client, name and date")) (blank("Signature")) (blank("Signature")) }
        }
    }
}
