//! Runs, fuse block, bank, sources and the body as a return: made typed.

use spile_answer::{Basis, Given};
use spile_quantity::{Area, CableSize, Current, Length, Ranged, Resistance, Temperature, Voltage};

use super::plausible as p;
use super::{Resolver, named, text, typical};
use crate::file::{
    BesideFile, BuildFile, CableFile, Chemistry, FuseFamily, FuseFile, Q, ReturnFile, ReturnPath,
    RunFile, SourceSupplyFile, WayFile,
};
use crate::model::{Bank, Beside, Block, Body, Cable, Fuse, Named, Return, Run, Source, Way};
use crate::read::{Record, Said, nearest, suggestion};

/// What is assumed of a conductor that little is said of.
struct Assumed<'a> {
    section: &'a str,
    length: &'a str,
    like: Option<&'a Cable>,
}

#[derive(Default, Clone)]
struct CableSaid {
    section: Option<Said<CableSize>>,
    length: Q<Length>,
    insulation: Q<Temperature>,
    ambient: Q<Temperature>,
    bundle: Option<Said<u32>>,
}

fn cable(said: &CableSaid, assumed: &Assumed<'_>, r: &mut Resolver<'_>) -> Cable {
    if let Some(section) = &said.section
        && let CableSize::Metric(area) = section.value
        && !(0.2..=300.0).contains(&area.in_mm2())
    {
        r.reader.tell(
            &section.at,
            "a cable's section lies between 0.2 mm² and 300 mm²",
            "not plausible",
            "check the number and its unit",
        );
    }
    if let Some(bundle) = &said.bundle
        && !(1..=60).contains(&bundle.value)
    {
        r.reader.tell(
            &bundle.at,
            "a bundle has between 1 and 60 conductors",
            "not plausible",
            "count the current-carrying conductors that lie together, feed and return alike",
        );
    }
    let (section, section_source, section_assumed) = match (&said.section, assumed.like) {
        (Some(section), _) => (section.value, r.files.place(&section.at), false),
        (None, Some(like)) => (like.section, like.section_source.clone(), like.section_assumed),
        (None, None) => (
            CableSize::Metric(typical::<Area>(assumed.section).likely()),
            "common practice".to_owned(),
            true,
        ),
    };
    let length = r.given(&said.length, Basis::Measured, p::CABLE_M).unwrap_or_else(|| {
        assumed.like.map_or_else(|| typical(assumed.length), |like| like.length.clone())
    });
    let mut temperature =
        |said: &Q<Temperature>, bounds, like: fn(&Cable) -> &Given<Temperature>, key| {
            r.given(said, Basis::Measured, bounds).unwrap_or_else(|| {
                assumed.like.map_or_else(|| typical(key), |cable| like(cable).clone())
            })
        };
    let insulation = temperature(
        &said.insulation,
        p::INSULATION_C,
        |cable| &cable.insulation,
        "insulation-rating",
    );
    let ambient =
        temperature(&said.ambient, p::SURROUNDINGS_C, |cable| &cable.ambient, "cable-place");
    if ambient.value.likely >= insulation.value.likely
        && let Some(said) = said.ambient.as_ref().or(said.insulation.as_ref())
    {
        r.reader.tell(
            &said.at,
            "the surroundings are as hot as the insulation stands",
            "no current could pass",
            "check the two temperatures, or choose another insulation or another way",
        );
    }
    Cable {
        section,
        section_source,
        section_assumed,
        length,
        insulation,
        ambient,
        bundle: said
            .bundle
            .as_ref()
            .map_or_else(|| assumed.like.map_or(2, |like| like.bundle), |said| said.value),
    }
}

fn said(file: Option<&Said<CableFile>>) -> CableSaid {
    file.map(|said| CableSaid {
        section: said.value.section.clone(),
        length: said.value.length.clone(),
        insulation: said.value.insulation.clone(),
        ambient: said.value.ambient.clone(),
        bundle: said.value.bundle.clone(),
    })
    .unwrap_or_default()
}

/// The body as a return.
pub(super) fn body(file: &BuildFile, r: &mut Resolver<'_>) -> Body {
    let file = file.body.as_ref().map(|said| said.value.clone()).unwrap_or_default();
    Body {
        resistance: r.or_typical(&file.resistance, p::RESISTANCE_OHM, "body-return"),
        stud: r.or_typical(&file.stud, p::RESISTANCE_OHM, "bond-stud"),
        cable: cable(
            &said(file.cable.as_ref()),
            &Assumed { section: "bond-section", length: "bond-length", like: None },
            r,
        ),
        insulated: file.insulated.as_ref().is_some_and(|said| said.value),
        tied_to: file.tied_to.as_ref().map(|said| said.value),
    }
}

/// Every run of the build, with the way that feeds it.
pub(super) fn runs(file: &BuildFile, r: &mut Resolver<'_>) -> Named<Run> {
    let ways = ways(file, r);
    named(&file.runs, |name, run: &RunFile| {
        let to = match &run.to {
            None if run.lacks(&["to"]).is_empty() => return None,
            said => said.as_ref().unwrap_or(name),
        };
        if !file.items.knows(&to.value) {
            let names: Vec<&str> = file.items.names().collect();
            let mut hint = suggestion(&to.value, &names);
            if run.to.is_none() && nearest(&to.value, &names).is_none() {
                hint.push_str("; say where it goes: to = \"the item's name\"");
            }
            r.reader.tell(
                &to.at,
                format!(
                    "the run `{}` goes to nothing: there is no item `{}`",
                    name.value, to.value
                ),
                "not in the build",
                hint,
            );
        }
        let feed = cable(
            &CableSaid {
                section: run.section.clone(),
                length: run.length.clone(),
                insulation: run.insulation.clone(),
                ambient: run.ambient.clone(),
                bundle: run.bundle.clone(),
            },
            &Assumed { section: "run-section", length: "run-length", like: None },
            r,
        );
        let back = back(run.r#return.as_ref(), &feed, r);
        let joints = if in_lugs(feed.section) { "run-lugs" } else { "plug" };
        Some(Run {
            to: to.value.clone(),
            switch: run.switch.as_ref().map(|said| said.value.clone()),
            joints: r.or_typical(&run.joints, p::RESISTANCE_OHM, joints),
            back,
            back_assumed: run.r#return.is_none(),
            along: text(&run.along),
            way: ways.get(&name.value).cloned(),
            feed,
        })
    })
}

/// Whether a cable is so thick that it ends in lugs on studs: no plug takes it.
fn in_lugs(section: CableSize) -> bool {
    match section {
        CableSize::Metric(area) => area >= Area::mm2(10.0),
        CableSize::Awg(gauge) | CableSize::Sae(gauge) => gauge.area() >= Area::mm2(10.0),
        CableSize::Outside(_) => false,
    }
}

fn back(said: Option<&Said<ReturnFile>>, feed: &Cable, r: &mut Resolver<'_>) -> Return {
    let file = said.map(|said| said.value.clone()).unwrap_or_default();
    let by_body = file.by.as_ref().is_some_and(|by| by.value == ReturnPath::Body);
    let stud_cable = typical::<Length>("body-stud-cable");
    let own = CableSaid {
        section: file.section.clone(),
        length: file.length.clone(),
        insulation: file.insulation.clone(),
        ambient: file.ambient.clone(),
        bundle: None,
    };
    if let (Some(stud), false) = (&file.stud, by_body) {
        r.reader.tell(
            &stud.at,
            "a return by cable has no stud on the body",
            "not used",
            "add by = \"body\", or leave the stud out",
        );
    }
    let mut cable =
        cable(&own, &Assumed { section: "run-section", length: "run-length", like: Some(feed) }, r);
    if by_body {
        if file.length.is_none() {
            cable.length = stud_cable;
        }
        let stud = r.or_typical(&file.stud, p::RESISTANCE_OHM, "stud-body");
        Return::Body { cable, stud }
    } else {
        Return::Cable(cable)
    }
}

/// The way that feeds each run, by the run's name.
fn ways(file: &BuildFile, r: &mut Resolver<'_>) -> Named<Way> {
    let mut ways: Named<Way> = Named::new();
    let Some(block) = &file.block else { return ways };
    let count = block.value.count.as_ref().map(|said| said.value);
    let mut numbers: Vec<u32> = Vec::new();
    for (number, WayFile { fuse, family, run, .. }) in block.value.ways.iter() {
        match (number.value.parse::<u32>(), count) {
            (Ok(n), Some(count)) if n == 0 || n > count => r.reader.tell(
                &number.at,
                format!("there is no way {n} in a block of {count}"),
                "no such way",
                "ways are numbered from 1; check the number or the block's `count`",
            ),
            (Ok(n), _) if numbers.contains(&n) => r.reader.tell(
                &number.at,
                format!("way {n} stands here for the second time"),
                "a second time",
                "keep one of the two",
            ),
            (Ok(n), _) => numbers.push(n),
            (Err(_), _) => r.reader.tell(
                &number.at,
                format!("`{}` is not the number of a way", number.value),
                "not a number",
                "name ways by their numbers: [block.ways.5]",
            ),
        }
        let fuse = r.given(fuse, Basis::Measured, p::CURRENT_A);
        let Some(run) = run else { continue };
        if !r.known(Some(run), "run", &file.runs) {
            continue;
        }
        let way = Way {
            number: number.value.clone(),
            fuse,
            family: family.as_ref().map_or(FuseFamily::Blade, |family| family.value),
        };
        if let Some(other) = ways.get(&run.value) {
            r.reader.tell(
                &run.at,
                format!("the run `{}` is fed by way {} already", run.value, other.number),
                "fed twice",
                "one run hangs on one way: name another run here, or leave it out",
            );
        } else {
            ways.insert(run.value.clone(), way);
        }
    }
    ways
}

/// The fuse block.
pub(super) fn block(build: &BuildFile, r: &mut Resolver<'_>) -> Block {
    let file = build.block.as_ref().map(|said| said.value.clone()).unwrap_or_default();
    let feed = cable(
        &said(file.feed.as_ref()),
        &Assumed { section: "bank-run-section", length: "bank-run-length", like: None },
        r,
    );
    let back = cable(
        &said(file.r#return.as_ref()),
        &Assumed { section: "bank-run-section", length: "bank-run-length", like: Some(&feed) },
        r,
    );
    let bay = file.place.as_ref().and_then(|said| said.value.r#in.as_ref());
    r.known(bay, "bay", &build.bays);
    Block {
        count: file.count.as_ref().map(|said| said.value),
        total: r.papers(&file.total, p::CURRENT_A),
        per_way: r.papers(&file.per_way, p::CURRENT_A),
        assumed: file.feed.is_none(),
        feed,
        back,
        joints: r.or_typical(&file.joints, p::RESISTANCE_OHM, "bank-joints"),
        ambient: r.or_typical(&file.ambient, p::SURROUNDINGS_C, "block-place"),
    }
}

/// The house battery.
pub(super) fn bank(file: &BuildFile, r: &mut Resolver<'_>) -> Option<Bank> {
    let said = file.bank.as_ref()?;
    let bank = &said.value;
    r.known(bank.part.as_ref(), "part", &file.parts);
    let bay = bank.place.as_ref().and_then(|said| said.value.r#in.as_ref());
    r.known(bay, "bay", &file.bays);
    let volts = r.given(&bank.volts, Basis::Measured, p::VOLT_V);
    if let (Some(volts), Some(at), Some(system)) = (&volts, &bank.volts, &file.system) {
        let system = system.value.ranged.likely;
        if (volts.likely() - system).in_v().abs() > 1.5 * (system.in_v() / 12.0) {
            r.reader.tell(
                &at.at,
                "the bank's voltage is not that of the house circuit",
                "not the circuit's voltage",
                "check `system`, or give the voltage of the batteries as they are joined",
            );
        }
    }
    let count = bank.count.as_ref().map_or(1, |count| count.value);
    if let Some(said) = &bank.count
        && !(1..=24).contains(&said.value)
    {
        r.reader.tell(
            &said.at,
            "a bank has between 1 and 24 batteries",
            "not plausible",
            "count the batteries in parallel",
        );
    }
    let label = bank
        .capacity
        .as_ref()
        .map(|said| Said { value: said.value.charge.clone(), at: said.at.clone() });
    let capacity = r.papers(&label, p::CHARGE_AS);
    let beside = bank.beside.as_ref().and_then(|said| beside(said, r));
    Some(Bank {
        beside,
        kind: bank.kind.as_ref().map_or(Chemistry::Agm, |kind| kind.value),
        kind_assumed: bank.kind.is_none(),
        count,
        bay: bay.map(|said| said.value.clone()),
        capacity,
        hour_rate: bank.capacity.as_ref().and_then(|said| said.value.hour_rate),
        resistance: r.given(&bank.resistance, Basis::Measured, p::RESISTANCE_OHM),
        limit: r.papers(&bank.limit, p::CURRENT_A),
        shunt: bank.shunt.as_ref().is_some_and(|said| said.value),
        fuse: main_fuse(bank.fuse.as_ref(), r),
        fuse_assumed: bank.fuse.is_none(),
    })
}

fn beside(said: &Said<BesideFile>, r: &mut Resolver<'_>) -> Option<Beside> {
    let file = &said.value;
    let hint = "write it like beside = { kind = \"AGM\", capacity = \"95 Ah @ 20 h\" }";
    r.reader.lacking(&said.at, "another battery on the posts", &file.lacks(&["kind"]), hint);
    let label = file.capacity.as_ref();
    let label = label.map(|said| Said { value: said.value.charge.clone(), at: said.at.clone() });
    let capacity = r.papers(&label, p::CHARGE_AS);
    Some(Beside { kind: file.kind.as_ref()?.value, capacity })
}

fn main_fuse(said: Option<&Said<FuseFile>>, r: &mut Resolver<'_>) -> Fuse {
    let file = said.map(|said| said.value.clone()).unwrap_or_default();
    let rating = r.given(&file.rating, Basis::Measured, p::CURRENT_A);
    let resistance = r.given(&file.resistance, Basis::Measured, p::RESISTANCE_OHM);
    let usual = || rating.as_ref().map_or_else(|| typical("fuse-main"), usual_resistance);
    Fuse {
        resistance: resistance.unwrap_or_else(usual),
        rating,
        family: file.family.as_ref().map(|said| said.value),
        breaks: r.papers(&file.breaks, p::BREAKING_A),
        from_post: r.given(&file.from_post, Basis::Measured, p::LEAD_M),
    }
}

/// What a bolted fuse with its holder usually has: it loses about the same volts at its rating,
/// whatever that is.
fn usual_resistance(rating: &Given<Current>) -> Given<Resistance> {
    let holder: Given<Resistance> = typical("fuse-holder-main");
    let drop: Given<Voltage> = typical("fuse-drop-main");
    let ohm = |drop: Voltage, holder: Resistance| drop / rating.likely() + holder;
    Given {
        value: Ranged {
            low: ohm(drop.value.low, holder.value.low),
            likely: ohm(drop.likely(), holder.likely()),
            high: ohm(drop.value.high, holder.value.high),
        },
        ..holder
    }
}

/// What charges the bank.
pub(super) fn sources(file: &BuildFile, r: &mut Resolver<'_>) -> Named<Source> {
    named(&file.sources, |name, source: &SourceSupplyFile| {
        let what = format!("the source `{}`", name.value);
        let hint = "add kind = \"solar\", \"alternator\", \"hook-up\" or \"generator\"";
        r.reader.lacking(&name.at, &what, &source.lacks(&["kind"]), hint);
        Some(Source {
            kind: source.kind.as_ref().map(|kind| kind.value),
            current: r.papers(&source.current, p::CURRENT_A),
            power: r.papers(&source.power, p::POWER_W),
        })
    })
}
