//! The stand-ins that fit goes by, read once.

use std::sync::LazyLock;

use spile_answer::Given;
use spile_build::typical;
use spile_quantity::Length;

/// Rules of good practice and stand-ins, all from `tables`.
pub(crate) struct Practice {
    pub(crate) air_behind: Given<Length>,
    pub(crate) air_side: Given<Length>,
    pub(crate) air_above: Given<Length>,
    pub(crate) slack: Given<Length>,
    pub(crate) over_arch: Given<Length>,
    pub(crate) finger_room: Given<Length>,
    pub(crate) hand_room: Given<Length>,
    pub(crate) aisle: Given<Length>,
    pub(crate) tail: Given<Length>,
    pub(crate) panel_strip: Given<Length>,
    pub(crate) blade_reach: Given<Length>,
    pub(crate) square: Given<Length>,
    pub(crate) marking: Given<Length>,
    pub(crate) kerf: Given<Length>,
    pub(crate) radius: Given<Length>,
    pub(crate) blade_through: Given<Length>,
}

pub(crate) static PRACTICE: LazyLock<Practice> = LazyLock::new(|| Practice {
    air_behind: typical("air-behind"),
    air_side: typical("air-side"),
    air_above: typical("air-above"),
    slack: typical("slack"),
    over_arch: typical("air-over-arch"),
    finger_room: typical("finger-room"),
    hand_room: typical("hand-room"),
    aisle: typical("aisle"),
    tail: typical("cable-tail"),
    panel_strip: typical("panel-strip"),
    blade_reach: typical("blade-reach"),
    square: typical("out-of-square"),
    marking: typical("marking-error"),
    kerf: typical("kerf-plunge-saw"),
    radius: typical("corner-radius"),
    blade_through: typical("blade-through"),
});
