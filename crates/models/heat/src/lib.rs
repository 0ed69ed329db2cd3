//! Heat through cabins, bays and cabinets, and the compressor that pumps it out again.
