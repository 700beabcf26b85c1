# SPDX-License-Identifier: Apache-2.0
"""Run files open in ordinary tools: ncdump, netCDF4, xarray over netCDF4 and over h5netcdf."""
import os
import shutil
import subprocess
import sys
import tempfile
import unittest
import warnings

try:
    import netCDF4
    import numpy as np
    import xarray as xr
    import h5netcdf  # noqa: F401  (one of xarray's two ways in)
except ImportError as missing:
    print(f"skipped: {missing} (Debian: python3-xarray python3-netcdf4 python3-h5netcdf)")
    sys.exit(77)

PROGRAM = os.path.join(os.environ.get("NOONHOUSE_BUILD_DIR", "build"), "tests", "record_sample_program")
ENGINES = ("netcdf4", "h5netcdf")
TABLES = {
    "events": "event", "metrics/plants": "plant", "metrics/levels": "layer", "metrics/devices": "device",
    "metrics/failures": "failure", "balance/nodes": "node_line", "balance/paths": "path_line",
    "ledger": "hour", "metrics/work_heat": "bay", "notes": "note",
}
BLOCKS = ("metrics/water", "metrics/energy", "metrics/cost", "metrics/steps", "balance/closure", "provenance",
          "scenario")


# Older xarray casts "no time" (NaN) to "not a time" with a warning; the outcome is checked below.
warnings.filterwarnings("ignore", message="invalid value encountered in cast")


class RunFile(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        cls.full = os.path.join(cls.folder.name, "full.h5")
        cls.empty = os.path.join(cls.folder.name, "empty.h5")
        subprocess.run([PROGRAM, cls.full], check=True)
        subprocess.run([PROGRAM, cls.empty, "--empty"], check=True)

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    def test_series_have_dimensions_units_and_values(self):
        row = np.arange(145)[:, None]
        expected = 290.0 + 10.0 * np.sin(0.05 * row) + 0.1 * np.arange(6)[None, :]
        for engine in ENGINES:
            with self.subTest(engine), xr.open_dataset(self.full, engine=engine) as run:
                self.assertEqual(dict(run.sizes), {"time": 145, "level": 3, "bay": 2})
                air = run["air_temperature"]
                self.assertEqual(air.dims, ("time", "level", "bay"))
                self.assertEqual(air.attrs["units"], "K")
                self.assertEqual(air.attrs["standard_name"], "air_temperature")
                # numpy's sine may differ from libm's in the last bits
                np.testing.assert_allclose(air.values.reshape(145, 6), expected, rtol=1e-14)
                self.assertEqual(list(run["bay"].values), ["west", "east"])
                self.assertEqual(list(run["level"].values), [0.25, 1.0, 1.75])
                self.assertEqual(list(run["level_label"].values), ["floor", "middle", "ridge"])
                self.assertEqual(float(run["latitude"]), 33.4)
                self.assertEqual(run.attrs["Conventions"], "CF-1.10")

    def test_labels_and_place_are_coordinates_of_the_series_they_belong_to(self):
        for engine in ENGINES:
            with self.subTest(engine), xr.open_dataset(self.full, engine=engine) as run:
                self.assertLessEqual({"level_label", "latitude", "longitude", "altitude"},
                                     set(run["air_temperature"].coords))
                self.assertNotIn("level_label", run["tank_mass"].coords)
                west = run["air_temperature"].sel(bay="west", level=1.0)
                self.assertEqual(float(west[0]), 290.0 + 0.1 * 2)

    def test_time_decodes_to_the_instant_in_utc(self):
        # Second 0 is 2025-07-14 00:00:00 at -07:00, which is 07:00 UTC.
        for engine in ENGINES:
            with self.subTest(engine), xr.open_dataset(self.full, engine=engine) as run:
                self.assertEqual(run["time"].values[0], np.datetime64("2025-07-14T07:00:00"))
                self.assertEqual(run["time"].values[-1], np.datetime64("2025-07-15T07:00:00"))
        with netCDF4.Dataset(self.full) as run:
            time = run["time"]
            first = netCDF4.num2date(time[0], time.units, time.calendar)
            self.assertEqual(first.isoformat(), "2025-07-14T07:00:00")
            self.assertTrue(run.dimensions["time"].isunlimited())

    def test_missing_values_are_missing(self):
        with netCDF4.Dataset(self.full) as run:
            self.assertEqual(list(np.flatnonzero(np.ma.getmaskarray(run["tank_mass"][:]))), [7])
        for engine in ENGINES:
            with self.subTest(engine), xr.open_dataset(self.full, engine=engine) as run:
                self.assertEqual(list(np.flatnonzero(np.isnan(run["tank_mass"].values))), [7])

    def test_every_group_opens_as_a_table(self):
        for engine in ENGINES:
            for group, dimension in TABLES.items():
                with self.subTest(engine=engine, group=group), \
                        xr.open_dataset(self.full, group=group, engine=engine) as table:
                    table.load()
                    self.assertEqual(table.sizes[dimension], 3)
            for group in BLOCKS:
                with self.subTest(engine=engine, group=group), \
                        xr.open_dataset(self.full, group=group, engine=engine) as block:
                    self.assertGreater(len(block.load().variables), 0)

    def test_events_and_outcomes_read_as_written(self):
        for engine in ENGINES:
            with self.subTest(engine):
                with xr.open_dataset(self.full, group="events", engine=engine) as events:
                    self.assertEqual(list(events["event"].values), [1, 2, 7_000_000_000])
                    self.assertEqual(list(events["what"].values), ["no rain", "at low mark", ""])
                    self.assertEqual(events["time"].values[2], np.datetime64("2025-07-15T06:20:00"))
                with xr.open_dataset(self.full, group="metrics/plants", engine=engine) as plants:
                    self.assertEqual(list(plants["plant"].values[:2]), ["ferns, north", 'moss \u00e9 "wet"'])
                    self.assertEqual(plants["peak_tissue_time"].values[0], np.datetime64("2025-07-14T21:00:00"))
                    self.assertTrue(np.isnat(plants["peak_tissue_time"].values[1]))
                    self.assertEqual(plants["hours_beyond"].dtype, np.float64)
                with xr.open_dataset(self.full, group="metrics/water", engine=engine) as water:
                    self.assertTrue(np.isnat(water["first_dry"].values))
                with xr.open_dataset(self.full, group="scenario", engine=engine) as scenario:
                    self.assertEqual(str(scenario["text"].values), "house:\n  bays: 2\n")

    def test_a_run_without_anything_opens_too(self):
        for engine in ENGINES:
            with self.subTest(engine), xr.open_dataset(self.empty, engine=engine) as run:
                self.assertEqual(run.sizes["time"], 0)
            for group, dimension in TABLES.items():
                with self.subTest(engine=engine, group=group), \
                        xr.open_dataset(self.empty, group=group, engine=engine) as table:
                    self.assertEqual(table.sizes[dimension], 0)

    def test_equal_runs_give_equal_files_whatever_the_memory_held(self):
        files = []
        for filler in ("1", "170"):  # glibc then fills fresh memory with this byte's complement
            path = os.path.join(self.folder.name, f"again-{filler}.h5")
            subprocess.run([PROGRAM, path], check=True, env={**os.environ, "MALLOC_PERTURB_": filler})
            with open(path, "rb") as file:
                files.append(file.read())
        self.assertEqual(files[0], files[1])

    @unittest.skipIf(shutil.which("ncdump") is None, "ncdump is missing (Debian: netcdf-bin)")
    def test_ncdump_reads_header_and_data(self):
        for path in (self.full, self.empty):
            header = subprocess.run(["ncdump", "-h", path], capture_output=True, text=True, check=True).stdout
            self.assertIn('time:units = "seconds since 2025-07-14 00:00:00', header)
            self.assertIn("group: provenance", header)
            self.assertNotIn("phony_dim", header)  # netCDF's name for a dimension without a scale
            subprocess.run(["ncdump", path], capture_output=True, check=True)
        data = subprocess.run(["ncdump", "-v", "bay", self.full], capture_output=True, text=True, check=True).stdout
        self.assertIn('bay = "west", "east"', data)


if __name__ == "__main__":
    unittest.main(warnings=False)
