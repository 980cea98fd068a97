"""Invents the records of two nights of examples/cressing-lane (loads, stations, stops, weather and temperatures of the mat) and that of the
trial length of examples/quay-road-hot-on-hot.yaml (densities after each pass, gauge and cores).

    python3 tests/Tools/invent-records.py examples

Everything is invented, with a fixed seed: the records show how the commands are used and prove nothing about any mix, machine or model. The
temperatures come from a rough model of this script (one layer on a half-space, explicit differences, one coefficient at the surface), not from the
program. Needs Python 3.9 or later and nothing else. Written again, the files are the same byte for byte.
"""
import csv
import math
import os
import random
import sys
from datetime import datetime, timedelta

WEATHER = {"monday": (14.0, 18.5, 1.7), "tuesday": (13.0, 17.5, 2.1)}
ABOUT = "Invented record of an invented night; it proves nothing about any mix, machine or model."

# Course, mix, thickness m, density kg/m3, laid at, delivered at (plan), conductivity, and the runs with width and begin.
NIGHTS = {
    "monday": dict(course="binder", mix="ac16-binder", t=0.065, rho=2450, laid=152, load=160, k=1.35, speed=4.5,
                   runs=[("binder-north", 3.7, "2027-06-07T20:00"), ("binder-south", 3.3, "2027-06-07T23:24")]),
    "tuesday": dict(course="surface", mix="sma11-surface", t=0.040, rho=2380, laid=157, load=165, k=1.35, speed=5.0,
                    runs=[("surface-north", 3.5, "2027-06-08T20:30")]),
}
COLDER = -3.5  # K behind the screed, against the plan.


def cooling(night, start, air, base, wind, seconds):
    """Skin and middle of the course after each time, °C: 2 mm cells, explicit in time."""
    dx, rho, heat = 0.002, night["rho"], 940.0
    cells, below = round(night["t"] / dx), 120
    t = [start] * cells + [base] * below
    k = [night["k"]] * cells + [1.3] * below
    h = 4 + 4 * wind + 7.0  # convection and long waves together
    dt, now, found = 0.9 * dx * dx * rho * heat / (2 * max(k)), 0.0, []
    for until in seconds:
        while now < until:
            flow = [2 * k[i] * k[i + 1] / (k[i] + k[i + 1]) * (t[i] - t[i + 1]) / dx for i in range(len(t) - 1)]
            top = h * (t[0] - air) / (1 + h * dx / 2 / k[0])
            t[0] -= dt * (top + flow[0]) / (rho * heat * dx)
            for i in range(1, len(t) - 1):
                t[i] += dt * (flow[i - 1] - flow[i]) / (rho * heat * dx)
            now += dt
        skin = t[0] - (h * (t[0] - air) / (1 + h * dx / 2 / k[0])) * dx / 2 / k[0]
        found.append((skin, t[cells // 2]))
    return found


def write(folder, name, header, rows):
    with open(os.path.join(folder, name), "w", newline="", encoding="utf-8") as file:
        csv.writer(file, lineterminator="\n").writerows([header, *rows])


def clock(at):
    return at.strftime("%Y-%m-%d %H:%M")


def night_of(name, night, folder, chance):
    os.makedirs(folder, exist_ok=True)
    air, base, wind = WEATHER[name]
    first = datetime.fromisoformat(night["runs"][0][2])
    tickets, sites, stations, readings, number = [], [], [], [], 4100 if name == "monday" else 4300
    for run, width, begin in night["runs"]:
        begin = datetime.fromisoformat(begin)
        laid = lambda at: begin + timedelta(minutes=at / night["speed"])
        stations += [(clock(laid(at)), at, run, night["course"]) for at in range(0, 801, 100)]
        done, heat = 0.0, {}
        while done < 799:
            net = round(chance.uniform(17.4, 18.4), 2)
            length = 1000 * net / (width * night["t"] * night["rho"])
            gap = 800 - done
            if length > gap - 6:
                length, net = gap, round(gap * width * night["t"] * night["rho"] / 1000, 2)
            done += length
            tare, number = round(chance.uniform(12.1, 12.9), 2), number + 1
            emptied = laid(done)
            arrived = emptied - timedelta(minutes=chance.randint(12, 22))
            loaded = arrived - timedelta(minutes=chance.randint(25, 31))
            degrees = round(night["load"] + chance.gauss(0, 2.0))
            heat[done] = degrees
            tickets.append((number, clock(loaded), f"H{chance.randint(1, 13):02}", night["mix"], f"{net + tare:.2f}", f"{tare:.2f}", degrees + chance.randint(5, 9), "valid"))
            sites.append((number, clock(arrived), clock(emptied - timedelta(minutes=3)), clock(emptied), round(done), run, degrees, "valid"))
        for at in range(80, 801, 160):
            own = heat[min(end for end in heat if end >= at - 0.5)]
            start = night["laid"] + COLDER + own - night["load"] + chance.gauss(0, 1.2)
            minutes = [2, 5, 10, 18, 28, 40]
            for minute, (skin, middle) in zip(minutes, cooling(night, start, air, base, wind, [60 * m for m in minutes])):
                when = clock(laid(at) + timedelta(minutes=minute))
                readings.append((when, at, run, night["course"], 0, round(skin + chance.gauss(0, 2.0)), "IR 1"))
                readings.append((when, at, run, night["course"], round(1000 * night["t"] / 2), round(middle + chance.gauss(0, 0.8)), "probe 2"))
    hours = range(-1, 9 if name == "monday" else 5)
    write(folder, "scale.csv", ["ticket", "time", "truck", "mix", "gross_t", "tare_t", "temperature_c", "status"], sorted(tickets, key=lambda row: (row[1], row[0])))
    write(folder, "deliveries.csv", ["ticket", "arrived", "started", "emptied", "station", "run", "temperature", "status"], sites)
    write(folder, "stations.csv", ["at", "station", "run", "course"], stations)
    write(folder, "mat-temperatures.csv", ["at", "station", "run", "course", "depth", "value", "instrument"], sorted(readings))
    write(folder, "weather.csv", ["at", "air", "surface", "wind", "rain"],
          [(clock(first + timedelta(hours=i)), f"{air - 0.2 * i:.1f}", f"{base - 0.2 * i:.1f}", f"{wind + chance.uniform(-0.3, 0.3):.1f}", 0) for i in hours])
    with open(os.path.join(folder, "record.yaml"), "w", encoding="utf-8") as file:
        file.write(MAPPING.format(name=name, about=ABOUT))


COMMON = """    encoding: utf-8
    delimiter: comma
    decimal_mark: point
    zone: +02:00
    columns:
"""

TICKETS = """  - file: scale.csv
    holds: load-tickets
""" + COMMON + """      - {{ column: ticket, quantity: ticket }}
      - {{ column: time, quantity: loaded }}
      - {{ column: truck, quantity: vehicle }}
      - {{ column: mix, quantity: mix }}
      - {{ column: gross_t, quantity: gross, unit: t }}
      - {{ column: tare_t, quantity: tare, unit: t }}
      - {{ column: temperature_c, quantity: temperature, unit: °C }}
      - {{ column: status, quantity: status }}
"""

MAPPING = """# yaml-language-server: $schema=../../../../schemas/record.schema.json
# Written by tests/Tools/invent-records.py. All of it is invented, as plan, place, firm and people are.
# laygate measured examples/cressing-lane/job.yaml examples/cressing-lane/records/{name}
format: 1
record:
  plan: cressing-lane-{name}
  about: {about}
  uncertainty: {{ mass: 0.2 %, density: 1.0 %, width: 0.5 %, length: 0.1 %, temperature: 1.0 K, skin: 2.3 K, thickness: 0.5 mm, time: 30 s }}
files:
""" + TICKETS + """      - {{ value: holm-quarry, quantity: plant }}
  - file: deliveries.csv
    holds: deliveries
""" + COMMON + """      - {{ column: ticket, quantity: ticket }}
      - {{ column: arrived, quantity: arrived }}
      - {{ column: started, quantity: started }}
      - {{ column: emptied, quantity: emptied }}
      - {{ column: station, quantity: station, unit: m }}
      - {{ column: run, quantity: run }}
      - {{ column: temperature, quantity: temperature, unit: °C }}
      - {{ column: status, quantity: status }}
  - file: stations.csv
    holds: stations
""" + COMMON + """      - {{ column: at, quantity: at }}
      - {{ column: station, quantity: station, unit: m }}
      - {{ column: run, quantity: run }}
      - {{ column: course, quantity: course }}
  - file: mat-temperatures.csv
    holds: mat-temperatures
""" + COMMON + """      - {{ column: at, quantity: at }}
      - {{ column: value, quantity: value, unit: °C }}
      - {{ column: station, quantity: station, unit: m }}
      - {{ column: run, quantity: run }}
      - {{ column: course, quantity: course }}
      - {{ column: depth, quantity: depth, unit: mm }}
      - {{ column: instrument, quantity: instrument }}
  - file: weather.csv
    holds: weather
""" + COMMON + """      - {{ column: at, quantity: at }}
      - {{ column: air, quantity: air, unit: °C }}
      - {{ column: surface, quantity: surface, unit: °C }}
      - {{ column: wind, quantity: wind, unit: m/s }}
      - {{ column: rain, quantity: rain, unit: mm }}
"""


# Density after each pass, kg/m3, at the mean of five places; the reference of the laboratory is 2428 kg/m3, of which the plan asks for 98 %.
GROWTH = [2185, 2262, 2311, 2341, 2358, 2376, 2393, 2399, 2398]
ROLLERS = [None, "r1", "r2", "r3", "r4", "r3", "r4", "r5", "r5"]
AFTER = [1, 3, 5, 9, 12, 15, 18, 28, 33]  # Minutes behind the screed.
SKIN = [146, 139, 132, 119, 111, 104, 98, 82, 76]
SHOWS_LESS = 26  # What the gauge shows less than the cores, kg/m3.
PLACES = [12, 22, 32, 42, 52]  # m from the start of the trial length


def trial(folder, chance):
    os.makedirs(folder, exist_ok=True)
    begin = datetime.fromisoformat("2027-04-29T09:40")
    laid = lambda at: begin + timedelta(minutes=at / 3.0)
    passes, cores, gauges = [], [], []
    for number, at in enumerate(PLACES, 1):
        own = chance.gauss(0, 4)
        for i, density in enumerate(GROWTH):
            shown = round(density + own - SHOWS_LESS + chance.gauss(0, 2))
            passes.append((clock(laid(at) + timedelta(minutes=AFTER[i])), ROLLERS[i] or "r1", at, i, round(SKIN[i] + chance.gauss(0, 1.5)), shown))
        bulk = round(GROWTH[-1] + own)
        readings = [f"{25.2 + chance.gauss(0, 0.5):.1f}" for _ in range(4)]
        cores.append((f"T{number}", at, "upper", *readings, bulk, 2428))
        gauges.append((number, clock(laid(at) + timedelta(minutes=50)), bulk - SHOWS_LESS + chance.randint(-3, 3), at, "upper", "N7", f"T{number}"))
    write(folder, "scale.csv", ["ticket", "time", "truck", "mix", "gross_t", "tare_t", "temperature_c", "status"], [("0871", clock(begin - timedelta(minutes=38)), "H07", "sma8-surface", "40.38", "15.62", 171, "valid")])
    write(folder, "roller-passes.csv", ["at", "roller", "station", "pass", "skin", "density"], sorted(passes))
    write(folder, "gauge-readings.csv", ["test", "at", "density", "station", "course", "gauge", "core"], gauges)
    write(folder, "cores.csv", ["core", "station", "course", "thickness_1", "thickness_2", "thickness_3", "thickness_4", "bulk", "reference"], cores)
    write(folder, "weather.csv", ["at", "air", "surface", "wind", "rain"], [(clock(begin + timedelta(minutes=20 * i)), f"{8.2 + 0.2 * i:.1f}", f"{11.5 + 0.4 * i:.1f}", f"{4.6 - 0.1 * i:.1f}", 0) for i in range(4)])
    with open(os.path.join(folder, "record.yaml"), "w", encoding="utf-8") as file:
        file.write(TRIAL.format(about="Invented record of an invented trial length; it proves nothing about any mix, machine or firm."))


TRIAL = """# yaml-language-server: $schema=../../schemas/record.schema.json
# Written by tests/Tools/invent-records.py. The record of the trial length of examples/quay-road-hot-on-hot.yaml; all of it is invented.
# laygate trial examples/quay-road-hot-on-hot.yaml examples/quay-road-trial --course upper --growth '16 kg/m3'
format: 1
record:
  plan: tamarel-quay-road-east
  of: trial-length
  about: {about}
  uncertainty: {{ mass: 0.2 %, density: 1.0 %, width: 0.5 %, length: 0.1 %, temperature: 1.0 K, skin: 2.3 K, thickness: 0.5 mm, time: 30 s }}
files:
""" + TICKETS + """      - {{ value: plant-b, quantity: plant }}
  - file: roller-passes.csv
    holds: roller-passes
""" + COMMON + """      - {{ column: at, quantity: at }}
      - {{ column: roller, quantity: roller }}
      - {{ column: station, quantity: station, unit: m }}
      - {{ column: pass, quantity: pass }}
      - {{ column: skin, quantity: skin, unit: °C }}
      - {{ column: density, quantity: density, unit: kg/m3 }}
  - file: gauge-readings.csv
    holds: gauge-readings
""" + COMMON + """      - {{ column: test, quantity: test }}
      - {{ column: at, quantity: at }}
      - {{ column: density, quantity: density, unit: kg/m3 }}
      - {{ column: station, quantity: station, unit: m }}
      - {{ column: course, quantity: course }}
      - {{ column: gauge, quantity: gauge }}
      - {{ column: core, quantity: core }}
  - file: cores.csv
    holds: cores
""" + COMMON + """      - {{ column: core, quantity: core }}
      - {{ column: station, quantity: station, unit: m }}
      - {{ column: course, quantity: course }}
      - {{ column: thickness_1, quantity: thickness_1, unit: mm }}
      - {{ column: thickness_2, quantity: thickness_2, unit: mm }}
      - {{ column: thickness_3, quantity: thickness_3, unit: mm }}
      - {{ column: thickness_4, quantity: thickness_4, unit: mm }}
      - {{ column: bulk, quantity: bulk, unit: kg/m3 }}
      - {{ column: reference, quantity: reference, unit: kg/m3 }}
  - file: weather.csv
    holds: weather
""" + COMMON + """      - {{ column: at, quantity: at }}
      - {{ column: air, quantity: air, unit: °C }}
      - {{ column: surface, quantity: surface, unit: °C }}
      - {{ column: wind, quantity: wind, unit: m/s }}
      - {{ column: rain, quantity: rain, unit: mm }}
"""


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    chance = random.Random(20270607)
    for name, night in NIGHTS.items():
        night_of(name, night, os.path.join(sys.argv[1], "cressing-lane", "records", name), chance)
    trial(os.path.join(sys.argv[1], "quay-road-trial"), random.Random(20270429))


main()
