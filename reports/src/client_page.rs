//! `client.html`: one sheet for the client, without costs, risk or margin: nothing of a quote reaches it but what is asked for.

mod findings;
mod message;

pub use findings::{ClientFindings, Terms, client};
pub use message::{Message, message};

use crate::findings::capital;
use crate::render::page::frame::frame;
use crate::render::page::words::tight;
use maud::{Markup, html};

/// What stands above what the client has to see to.
const SEE_TO: &str = "Please see to this";

/// The page for the client.
pub fn client_page(findings: &ClientFindings) -> String {
    frame(
        &findings.title,
        html! {
            div.client {
                header {
                    h1 { (findings.title) }
                    p.soft { "Quote, reference " (findings.reference) }
                }
                div.lines { (blank("From")) (blank("For")) (blank("Where")) (blank("Valid until")) }
                (work(findings))
                (when(findings))
                (price(findings))
                (list(SEE_TO, &findings.see_to))
                (list("What may change the price", &findings.may_change))
                p { "Whatever changes it, we talk before we go on." }
                (agreed())
            }
        },
    )
}

fn blank(what: &str) -> Markup {
    html! { p.fill-in { span { (what) } } }
}

fn work(findings: &ClientFindings) -> Markup {
    html! {
        section id="work" {
            h2 { "What is done" }
            p { (tight(&capital(&findings.what))) }
            @if let Some(missing) = &findings.missing { p.heed { (tight(missing)) } }
            ul.ground { @for line in &findings.ground { li { (tight(line)) } } }
        }
    }
}

fn when(findings: &ClientFindings) -> Markup {
    html! {
        section id="when" {
            h2 { "When" }
            @if let Some(date) = &findings.date {
                p { (date) ", " (tight(&findings.from())) }
            } @else {
                div.lines { (blank("Date")) }
                p { (tight(&capital(&findings.from()))) }
            }
            p { (tight(&findings.until())) }
        }
    }
}

fn price(findings: &ClientFindings) -> Markup {
    html! {
        section id="price" {
            h2 { "Price" }
            @match &findings.terms {
                Terms::Fixed { price } => {
                    p.big { span { (price) } }
                }
                Terms::Hourly { hours, rate, sums, limit } => {
                    p.plan { (tight(hours)) " hours at " (rate) ": " (tight(sums)) "." }
                    p.plan { "Not more than " (limit) " without asking you first." }
                }
            }
            p { (findings.included) }
            div.lines {
                @if findings.material_besides { (blank("Material, brought here")) }
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
