//! Shapes in the vehicle, and the distances between them.
