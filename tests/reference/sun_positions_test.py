#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The sun's place agrees with an independent astronomical library (python3-ephem, planetary theory VSOP87) within
TOLERANCE_DEG of arc on the sky, from 1950 to 2050, on both hemispheres, at the poles and at the date line.

Compared are places as seen from the ground without refraction: the library's air pressure is set to zero.
"""
import math
import os
import pathlib
import random
import subprocess
import sys
import unittest

try:
    import ephem
except ImportError:
    print("python3-ephem is not installed")
    sys.exit(77)

BUILD = pathlib.Path(os.environ.get("NOONHOUSE_BUILD_DIR", pathlib.Path(__file__).resolve().parents[2] / "build"))
PROGRAM = BUILD / "tests/sun_positions_program"
TOLERANCE_DEG = 0.003  # what sun_position() promises

PLACES = [(90.0, 0.0), (-90.0, 0.0), (0.0, 0.0), (0.0, 180.0), (0.0, -180.0), (-17.7, 179.99), (-17.7, -179.99),
          (33.4, -112.0), (-33.9, 151.2), (51.5, -0.1), (69.6, 18.9), (-77.8, 166.7), (1.3, 103.8), (23.44, 5.5)]
FIRST_DAY = 2433282.5  # 1950 January 1, 0 h
LAST_DAY = 2469807.5  # 2050 January 1, 0 h
DUBLIN_DAY = 2415020.0  # the library counts days from here


def sample(count_a_place):
    """Instants spread over the century at every place, the same at every run."""
    source = random.Random(20260101)
    stratum = (LAST_DAY - FIRST_DAY) / count_a_place
    return [(FIRST_DAY + (k + source.random()) * stratum, latitude, longitude)
            for latitude, longitude in PLACES for k in range(count_a_place)]


def direction(elevation, azimuth):
    return (math.cos(elevation) * math.sin(azimuth), math.cos(elevation) * math.cos(azimuth), math.sin(elevation))


def apart_deg(a, b):
    """Arc between two unit vectors, exact for small arcs too."""
    chord = math.dist(a, b)
    return math.degrees(2.0 * math.asin(min(1.0, 0.5 * chord)))


def independent(julian_day, latitude, longitude):
    place = ephem.Observer()
    place.lat, place.lon = math.radians(latitude), math.radians(longitude)
    place.elevation, place.pressure = 0.0, 0.0
    place.date = julian_day - DUBLIN_DAY
    sun = ephem.Sun(place)
    return direction(float(sun.alt), float(sun.az))


def ours(points):
    text = "".join(f"{day:.9f} {latitude:.6f} {longitude:.6f}\n" for day, latitude, longitude in points)
    run = subprocess.run([PROGRAM], input=text, capture_output=True, text=True, check=True)
    rows = [[math.radians(float(word)) for word in line.split()] for line in run.stdout.splitlines()]
    return [direction(*row) for row in rows]


class TheSun(unittest.TestCase):
    def test_stands_where_the_independent_library_has_it(self):
        points = sample(60)
        places = ours(points)
        self.assertEqual(len(points), len(places))
        arcs = [apart_deg(mine, independent(*point)) for mine, point in zip(places, points)]
        worst = max(range(len(arcs)), key=arcs.__getitem__)
        mean = sum(arcs) / len(arcs)
        print(f"worst {arcs[worst]:.5f} deg at {points[worst]}, mean {mean:.5f} deg, {len(arcs)} places and instants")
        self.assertLess(arcs[worst], TOLERANCE_DEG)

    def test_a_minute_of_clock_or_a_tenth_of_a_degree_of_place_would_show(self):
        for day, latitude, longitude in sample(2):
            mine = ours([(day, latitude, longitude)])[0]
            self.assertGreater(apart_deg(mine, independent(day + 1.0 / 1440.0, latitude, longitude)), 0.2)
            # A tenth of a degree of latitude turns the horizon under the sun by that much, save along its axis.
            moved = latitude - math.copysign(0.1, latitude)
            self.assertGreater(apart_deg(mine, independent(day, moved, longitude)), 0.002)


if __name__ == "__main__":
    unittest.main()
