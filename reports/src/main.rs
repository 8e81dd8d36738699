//! heapcast.
fn main() {}
