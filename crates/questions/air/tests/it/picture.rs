//! What the section of a bay shows against what the answer says, and against the balance of heat.

use crate::{FRIDGE, INVERTER, WELL, ask, build, likely, locker};

#[test]
fn the_bay_is_as_warm_as_the_answer_says_and_loses_what_it_gets() {
    for text in
        [locker(WELL, FRIDGE), locker(WELL, &format!("{FRIDGE}{INVERTER}")), locker("", FRIDGE)]
    {
        let pictures = spile_air::pictures(&build(&text));
        let [picture] = pictures.as_slice() else { panic!("one bay is warm") };
        let warm = likely(&ask(&text), "locker.warm");
        assert!((picture.bay.in_celsius() - warm).abs() < 1e-6);
        let carried_w = picture.stream.map_or(0.0, |stream| stream.carried.in_w());
        let given_w = picture.boxes.in_w() + picture.machines.in_w();
        let off_w = given_w - picture.walls.in_w() - carried_w;
        assert!(off_w.abs() < 1e-3 * given_w, "{off_w} W of {given_w}");
    }
}

#[test]
fn air_rises_through_the_bay_unless_the_outlet_is_the_lower_one() {
    let upside_down = r#"
        air.apart = "900 mm"
        air.inlet = { area = "180 cm2", above = "820 mm", leads_to = "cabin" }
        air.outlet = { area = "200 cm2", above = "60 mm", leads_to = "cabin" }
    "#;
    for (air, forward) in [(WELL, true), (upside_down, false)] {
        let pictures = spile_air::pictures(&build(&locker(air, FRIDGE)));
        let stream = pictures[0].stream.expect("openings");
        assert_eq!((stream.forward, stream.known), (forward, true));
        assert!(stream.incoming >= pictures[0].cabin && stream.incoming <= pictures[0].bay);
    }
}
