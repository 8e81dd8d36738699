//! What a quote says: what the job costs, what to ask for it, what an hour costs, and what is not in it.

mod costs;
mod curve;
mod gaps;
mod hours;
mod offer;
mod parts;
mod price;
mod terms;
mod truckload;
mod words;

pub use costs::{CostPart, Costs, RunCost};
pub use curve::{RiskPoint, risk_curve};
pub use gaps::{Gaps, gaps};
pub use hours::{HourlyEstimate, HoursFindings, HoursRow, hours};
pub use offer::{Asked, Offer, SettledBy, offer};
pub use parts::{CostFindings, CostLine, SHARES, cost};
pub use price::{Price, PriceOf};
pub(super) use terms::terms;
pub use truckload::{TruckloadFindings, truckload};
