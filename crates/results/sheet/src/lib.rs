//! "Give me the marks so that I can cut by them." — papers and drawings made from answers.
//!
//! [`vehicle()`] draws the vehicle in plan and from its side, [`drawings()`] what belongs to a
//! question, each for a laptop and anew for a phone ([`Width`]); [`limit_bar()`] is a finding's bar,
//! and [`STYLE`] how all of them look. They are lettered so that no lettering touches other
//! lettering, are drawn by classes alone, and each has its figures as [`Rows`] too. What a build
//! does not say is listed below its drawing, not made up.
//!
//! [`marks_text`] is the table of a mark-out for the terminal and the pocket, at most 80 columns
//! wide; [`marks_svg`] the same as a drawing at full size, to be printed and laid on the panel.
//! Both take a [`MarkOut`](spile_fit::MarkOut) and compute nothing: where a mark lies and what it
//! may be off by is said there.
//!
//! **The drawing.** One unit of the SVG is one millimetre. Line weights are those of a workshop
//! drawing: cut 0.5 mm, seen 0.35, thin 0.25, hair 0.13. Running dimensions start at the datum,
//! the lower left corner of the panel's face. Labels that would touch are moved apart and led to
//! their marks. A bar of 100 mm and one of 4 in show whether a printer kept the size. Everything is
//! black on white.
//!
//! **Limits.** One rectangular cut-out a sheet. The sheet is as large as its panel; dividing it
//! among the pages of a printer is not done here. Widths of letters are estimated, since the font
//! is the reader's own.
//!
//! ```
//! let folder = spile_build::Folder::from_texts([("build.toml", r#"
//! [parts.fridge]
//! kind = "upright fridge"
//! size = { width = "475 mm", height = "780 mm", depth = "495 mm" }
//! cutout = { width = "482 mm +2/-1", height = "787 mm +2/-1", radius = "8 mm" }
//! [bays.galley]
//! size = { width = "520 mm", height = "1140 mm", depth = "540 mm" }
//! [panels.front]
//! closes = "galley"
//! size = { width = "560 mm", height = "1140 mm", depth = "12 mm" }
//! [items.fridge]
//! place = { in = "galley", above = "275 mm" }
//! panel = "front"
//! "#)]).unwrap();
//! let marks = spile_fit::mark_out(folder.build(), "fridge").unwrap();
//! let table = spile_sheet::marks_text(&marks);
//! assert!(table.contains("20 17/32"));
//! assert!(spile_sheet::marks_svg(&marks).starts_with("<svg"));
//! ```

pub mod bar;
mod drawing;
mod energy;
mod fit;
mod forces;
pub mod ink;
mod layout;
mod oneline;
mod plot;
mod points;
mod section;
mod svg;
mod text;
mod vehicle;
mod volts;
mod year;

pub use bar::{BarSize, limit_bar};
pub use drawing::{Drawing, Numbered, Rows, Width, drawings, numbers, vehicle};
pub use svg::marks_svg;
pub use text::marks_text;

/// How drawings and limit bars look: tokens by day, by night and in print, and the classes of
/// lines and lettering. Everything drawn here is drawn by these classes alone.
pub const STYLE: &str = include_str!("style.css");
