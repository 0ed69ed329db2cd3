//! What a draughtsman has on the table: lines by their class, hatching, dimensions, lettering that
//! never touches other lettering.
//!
//! An [`Ink`] is a sheet of a given width in drawing units; one unit is one pixel of the page for
//! which it is lettered. A [`View`] carries millimetres of the vehicle to units of the sheet, and
//! its element says how, so that a pointer can be carried back. Everything is drawn by class; the
//! looks are in [`STYLE`](crate::STYLE).
//!
//! ```
//! use spile_sheet::ink::{Ink, Line, View};
//!
//! let mut ink = Ink::new(328.0);
//! let view = View { name: "plan", axes: "x y", scale: 20.0, origin: [20.0, 100.0] };
//! ink.rect(Line::Seen, view.rect([0.0, 0.0], [1000.0, 600.0]));
//! ink.dimension_across(120.0, [20.0, 70.0], 100.0, "1,000");
//! let svg = ink.finish("drawing", "a box", "One box of 1,000 by 600 mm.", Some(&view)).into_string();
//! assert!(svg.contains(r#"data-mm="20""#));
//! ```

mod canvas;
mod letter;
mod mark;
mod view;

pub use canvas::{Ink, Line};
pub use letter::{Anchor, Letter, Spot, figure, text_width, wrapped};
pub use view::{Box2, View, number, scale_words};
