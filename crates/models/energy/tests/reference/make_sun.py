"""Writes sun.json: the sun's chain from position to power, of sixty instants and of one real year.

Run: python make_sun.py   (needs pvlib, numpy, pandas; the TMY3 file comes with pvlib)

Instants: positions by NREL's SPA without refraction, air mass by Kasten and Young, clear sky by
Ineichen, transposition by Hay and Davies, incidence loss by the physical model of De Soto, cells by
Faiman, power by PVWatts. The year is TMY3 Greensboro, North Carolina (US government work): only its
monthly sums are kept, and its irradiance hour by hour is not. So that both chains get the same
weather, the file also keeps for every third day of the year the hourly global and diffuse
irradiance and temperature as whole numbers, and the sums are of those days.
"""
import json, pathlib
import numpy as np, pandas as pd, pvlib
from pvlib import solarposition, atmosphere, clearsky, irradiance, iam, temperature, pvsystem, iotools

here = pathlib.Path(__file__).parent


def chain(times, lat, lon, tilt, azimuth, altitude, linke, ghi=None, dhi=None, air_c=20.0, wind=1.0):
    pos = solarposition.spa_python(times, lat, lon, altitude=0, pressure=101325, temperature=12,
                                   delta_t=69.0)
    zenith = pos["zenith"]
    extra = irradiance.get_extra_radiation(times, method="spencer", solar_constant=1366.1)
    am = atmosphere.get_relative_airmass(zenith, model="kastenyoung1989")
    pressure = atmosphere.alt2pres(altitude)
    absolute = atmosphere.get_absolute_airmass(am, pressure)
    clear = clearsky.ineichen(zenith, absolute, linke, altitude, extra)
    if ghi is None:
        ghi, dhi, dni = clear["ghi"], clear["dhi"], clear["dni"]
    else:
        cos = np.cos(np.radians(zenith))
        dni = np.where(zenith < 87, (ghi - dhi) / cos, 0.0)
        dhi = np.where(zenith < 87, dhi, ghi)
        dni = pd.Series(np.maximum(dni, 0), index=times)
        dhi = pd.Series(dhi, index=times)
    aoi = irradiance.aoi(tilt, azimuth, zenith, pos["azimuth"])
    sky = irradiance.haydavies(tilt, azimuth, dhi, dni, extra, zenith, pos["azimuth"])
    ground = irradiance.get_ground_diffuse(tilt, ghi, albedo=0.2)
    direct = dni * np.maximum(np.cos(np.radians(aoi)), 0)
    loss = iam.physical(aoi)
    plane = direct + sky + ground
    cell = temperature.faiman(plane, air_c, wind, u0=20.0, u1=0.0)
    used = direct * np.nan_to_num(loss) + sky + ground
    power = pvsystem.pvwatts_dc(used, cell, 100.0, -0.0035)
    return pos, extra, am, clear, aoi, sky, loss, plane, cell, power


rng = np.random.default_rng(3)
cases = []
start = pd.Timestamp("2025-01-01T00:00:00Z")
while len(cases) < 60:
    second = int(rng.integers(0, 365 * 24 * 60)) * 60
    lat, lon = round(float(rng.uniform(-55, 70)), 3), round(float(rng.uniform(-180, 180)), 3)
    tilt, azimuth = float(rng.choice([0, 10, 30, 60])), float(rng.integers(0, 360))
    altitude, linke = float(rng.choice([0, 300, 1500])), float(rng.choice([2, 3, 4.5]))
    air = float(rng.integers(-10, 40))
    times = pd.DatetimeIndex([start + pd.Timedelta(seconds=second)])
    pos, extra, am, clear, aoi, sky, loss, plane, cell, power = chain(
        times, lat, lon, tilt, azimuth, altitude, linke, air_c=air)
    if not pos["zenith"].iloc[0] < 85:
        continue
    value = lambda x: float(np.asarray(x).ravel()[0])
    cases.append({
        "day": times[0].day_of_year, "hour": times[0].hour + times[0].minute / 60,
        "latitude": lat, "longitude": lon, "tilt": tilt, "faces": azimuth, "altitude": altitude,
        "linke": linke, "air": air,
        "zenith": value(pos["zenith"]), "azimuth": value(pos["azimuth"]), "extra": value(extra),
        "air_mass": value(am), "clear_ghi": value(clear["ghi"]), "clear_dni": value(clear["dni"]),
        "clear_dhi": value(clear["dhi"]), "aoi": value(aoi), "sky": value(sky), "iam": value(loss),
        "plane": value(plane), "cell": value(cell), "power": value(power),
    })

folder = pathlib.Path(pvlib.__file__).parent / "data"
tmy, meta = iotools.read_tmy3(folder / "723170TYA.CSV", coerce_year=2025, map_variables=True)
lat, lon = meta["latitude"], meta["longitude"]
# A row is the hour that ends at its time; its sun is that of its middle.
middle = (tmy.index - pd.Timedelta(minutes=30)).tz_convert("UTC")
frame = pd.DataFrame({"ghi": tmy["ghi"].values, "dhi": tmy["dhi"].values,
                      "air": tmy["temp_air"].values, "month": np.repeat(np.arange(1, 13),
                      np.array([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]) * 24)}, index=middle)
day = np.repeat(np.arange(1, 366), 24)
frame["day"] = day
kept = frame[day % 3 == 1].copy()
kept["dhi"] = np.minimum(kept["dhi"], kept["ghi"])
*_, plane, cell, power = chain(kept.index, lat, lon, 15.0, 180.0, 0.0, 3.0,
                               ghi=kept["ghi"], dhi=kept["dhi"], air_c=kept["air"].round())
sums = lambda x: [round(float(np.nansum(np.asarray(x)[kept["month"] == m])), 3) for m in range(1, 13)]
flat = [t.hour + t.minute / 60 for t in kept.index]

# Daily clearness of whole years, by month: mean and deciles.
out = []
for name, file, reader in [("Greensboro", "723170TYA.CSV", "3"), ("Sand Point", "703165TY.csv", "3"),
                           ("Miami", "12839.tm2", "2")]:
    if reader == "3":
        t, m = iotools.read_tmy3(folder / file, coerce_year=2025, map_variables=True)
        g, la = t["ghi"].values, m["latitude"]
    else:
        t, m = iotools.read_tmy2(folder / file)
        g, la = t["GHI"].values, m["latitude"]
    daily = g.reshape(365, 24).sum(1)
    j = np.arange(1, 366)
    dr, de = 1 + 0.033 * np.cos(2 * np.pi * j / 365), 0.409 * np.sin(2 * np.pi * j / 365 - 1.39)
    phi = np.radians(la)
    ws = np.arccos(np.clip(-np.tan(phi) * np.tan(de), -1, 1))
    ra = 24 * 60 / np.pi * 0.0820 * dr * (ws * np.sin(phi) * np.sin(de)
                                          + np.cos(phi) * np.cos(de) * np.sin(ws)) * 1e6 / 3600
    kt = daily / ra
    month = np.repeat(np.arange(1, 13), [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])
    lag = np.corrcoef(kt[:-1] - np.array([kt[month == q].mean() for q in month])[:-1],
                      kt[1:] - np.array([kt[month == q].mean() for q in month])[1:])[0, 1]
    out.append({"name": name, "latitude": round(float(la), 4),
                "means": [round(float(kt[month == q].mean()), 4) for q in range(1, 13)],
                "deciles": [round(float(v), 4) for v in np.quantile(kt, np.arange(0.1, 0.95, 0.1))],
                "deviation": round(float(kt.std()), 4), "lag_one": round(float(lag), 4)})

data = {
    "made_by": "make_sun.py", "pvlib": pvlib.__version__, "numpy": np.__version__,
    "pandas": pd.__version__,
    "instants": cases,
    "year": {"station": "TMY3 723170 Greensboro", "latitude": lat, "longitude": lon,
             "day": [int(x) for x in kept["day"]], "utc_day": [int(t.day_of_year) for t in kept.index],
             "hour": flat, "ghi": [int(x) for x in kept["ghi"]], "dhi": [int(x) for x in kept["dhi"]],
             "air": [int(round(x)) for x in kept["air"]], "month": [int(x) for x in kept["month"]],
             "plane_sums": sums(plane), "power_sums": sums(power)},
    "clearness": out,
}
(here / "sun.json").write_text(json.dumps(data) + "\n")
