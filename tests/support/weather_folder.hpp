// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <fmt/format.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>

namespace noonhouse {

/// A folder of this process' own, with a weather file in it, removed afterwards.
class WeatherFolder {
 public:
  WeatherFolder(const std::string& file, const std::string& text)
      : path_(std::filesystem::temp_directory_path() / fmt::format("noonhouse_weather_{}", ::getpid())) {
    std::filesystem::create_directories(path_);
    std::ofstream(path_ / file) << text;
  }
  ~WeatherFolder() { std::filesystem::remove_all(path_); }
  WeatherFolder(const WeatherFolder&) = delete;
  WeatherFolder& operator=(const WeatherFolder&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

}  // namespace noonhouse
