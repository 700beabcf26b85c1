# SPDX-License-Identifier: Apache-2.0
# The rooms, bottom to top. tests/architecture/rooms_test.py reads this same list.

room(sim/core LINKS Boost::headers)
room(sim/contract USES sim/core)
room(sim/calendar USES sim/core sim/contract)
room(sim/graph USES sim/core sim/contract LINKS Boost::headers)
room(sim/integrate USES sim/core sim/contract sim/graph)
room(sim/run USES sim/core sim/contract sim/calendar sim/graph sim/integrate LINKS Boost::headers)

room(models/properties USES sim/core LINKS Boost::headers)
room(models/light USES sim/core models/properties LINKS Eigen3::Eigen)
room(models/weather USES sim/core sim/contract models/properties LINKS Boost::headers)
room(models/envelope USES sim/core sim/contract models/properties)
room(models/air USES sim/core sim/contract models/properties LINKS Boost::headers Eigen3::Eigen)
room(models/ground USES sim/core sim/contract models/properties)
room(models/plants USES sim/core sim/contract models/properties)
room(models/water USES sim/core sim/contract models/properties)
room(models/power USES sim/core sim/contract models/properties)
room(models/control USES sim/core sim/contract models/properties)
room(models/hazard USES sim/core sim/contract models/properties)

room(tools/text)
room(tools/units USES sim/core LINKS fmt::fmt)
room(tools/weather_file USES sim/core models/properties models/weather tools/units LINKS Boost::headers fmt::fmt)
room(tools/scenario USES sim/core sim/contract sim/graph sim/run models/properties models/light models/weather
     models/envelope models/air models/ground models/plants models/water models/power models/control models/hazard
     tools/units tools/weather_file LINKS Boost::headers yaml-cpp fmt::fmt nlohmann_json::nlohmann_json)
room(tools/places USES sim/core sim/contract models/properties models/light models/weather tools/text tools/units
     tools/scenario
     LINKS fmt::fmt)
room(tools/airing USES sim/core sim/contract sim/graph sim/integrate sim/run models/properties models/weather models/air
     tools/units tools/scenario LINKS fmt::fmt)
room(tools/ledger USES sim/core sim/contract sim/graph models/properties)
room(tools/record USES sim/core sim/contract sim/graph sim/run tools/units
     LINKS Boost::headers hdf5::hdf5_cpp hdf5::hdf5_hl hdf5::hdf5 fmt::fmt)
room(tools/compare USES sim/core sim/contract sim/graph sim/run models/properties models/weather models/power
     models/hazard tools/units tools/scenario tools/airing tools/record tools/ledger
     LINKS fmt::fmt nlohmann_json::nlohmann_json)
room(tools/placing USES sim/core sim/contract sim/graph sim/run models/properties models/light models/envelope
     models/plants models/water models/control models/weather tools/text tools/units tools/scenario tools/record
     tools/compare LINKS Boost::headers fmt::fmt)
room(tools/faults USES sim/core sim/contract sim/graph sim/run models/weather tools/units tools/scenario tools/record
     tools/compare LINKS fmt::fmt nlohmann_json::nlohmann_json)
room(tools/report USES sim/core tools/text tools/units tools/record tools/compare tools/faults
     LINKS fmt::fmt nlohmann_json::nlohmann_json)
room(tools/cli USES sim/core sim/run models/weather tools/units tools/scenario tools/places tools/airing tools/weather_file
     tools/record tools/compare tools/placing tools/faults tools/report
     LINKS CLI11::CLI11 fmt::fmt nlohmann_json::nlohmann_json Threads::Threads)
