// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <array>
#include <concepts>
#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "tools/scenario/field_options.hpp"
#include "tools/scenario/field_scalar.hpp"

namespace noonhouse {

/// Walks the field list of a parameter struct. Each struct lists its fields once, in its own namespace:
///
///   void fields(FieldVisitor& v, Vent& s) {
///     v.quantity("area", s.area_m2, Dimension::area,
///                {.minimum = 0, .exclusive_minimum = true, .about = "clear opening when fully open"});
///     v.quantity("opens_to", s.share, Dimension::share, {.default_text = "100 %", .about = "..."});
///     v.choice("kind", s.kind, {{"roof", Kind::roof}, {"side", Kind::side}}, {.about = "..."});
///     v.name_of("bay", s.bay, {.of = {"house.bays"}, .about = "..."});
///     v.named("sensors", s.sensors, {.about = "..."});   // std::vector<Named<Sensor>>, in file order
///   }
///
/// and loading, saving, the schema and the list of named mappings all come from it (field_tools.hpp). Every field has
/// a one-line `about`. A field without a default is required; std::optional values may be absent.
class FieldVisitor {
 public:
  FieldVisitor() = default;
  FieldVisitor(const FieldVisitor&) = delete;
  FieldVisitor& operator=(const FieldVisitor&) = delete;
  virtual ~FieldVisitor() = default;

  void quantity(const char* name, double& si, Dimension d, const QuantityOptions& o) {
    scalar(quantity_field(name, si, d, o));
  }
  void quantity(const char* name, std::optional<double>& si, Dimension d, const QuantityOptions& o) {
    scalar(quantity_field(name, si, d, o));
  }
  void number(const char* name, double& value, const QuantityOptions& o) { quantity(name, value, Dimension::none, o); }
  template <std::integral I>
  void integer(const char* name, I& value, const IntegerOptions& o) {
    scalar(integer_field(
        name, static_cast<std::int64_t>(value), [&](std::int64_t n) { value = static_cast<I>(n); }, within<I>(o)));
  }
  void flag(const char* name, bool& value, const PlainOptions& o) { scalar(flag_field(name, value, o)); }
  void text(const char* name, std::string& value, const PlainOptions& o) { scalar(text_field(name, value, o)); }
  /// The name of an item elsewhere; Places::check_names checks it once all is loaded.
  void name_of(const char* name, std::string& value, const NameOptions& o) { scalar(name_field(name, value, o)); }
  /// Seconds since midnight [s], written "08:30".
  void time_of_day(const char* name, double& seconds, const PlainOptions& o) {
    scalar(time_of_day_field(name, seconds, o));
  }
  void date(const char* name, std::chrono::year_month_day& value, const PlainOptions& o) {
    scalar(date_field(name, value, o));
  }
  void date_time(const char* name, LocalTime& value, const PlainOptions& o) { scalar(date_time_field(name, value, o)); }
  /// Seconds ahead of UTC [s], east positive, written "-07:00".
  void utc_offset(const char* name, double& seconds_east, const PlainOptions& o) {
    scalar(utc_offset_field(name, seconds_east, o));
  }
  /// One of a few words.
  template <class E>
  void choice(const char* name, E& value, const std::vector<Choice<E>>& choices, const PlainOptions& o) {
    std::vector<std::string> words;
    std::size_t index = 0;
    for (const Choice<E>& c : choices) {
      if (c.value == value) index = words.size();
      words.emplace_back(c.word);
    }
    scalar(choice_field(
        name, words, index, [&](std::size_t i) { value = choices[i].value; }, o));
  }

  /// Lists of scalars. The options' default_text is not used: an absent list is empty, or an error where required.
  void quantities(const char* name, std::vector<double>& values, Dimension d, const QuantityOptions& item,
                  const ListOptions& o) {
    scalars(name, values, o, [&](const std::string& label, double& x) { return quantity_field(label, x, d, item); });
  }
  void texts(const char* name, std::vector<std::string>& values, const ListOptions& o) {
    scalars(name, values, o,
            [&](const std::string& label, std::string& x) { return text_field(label, x, {.about = o.about}); });
  }
  void names_of(const char* name, std::vector<std::string>& values, const NameOptions& item, const ListOptions& o) {
    scalars(name, values, o, [&](const std::string& label, std::string& x) { return name_field(label, x, item); });
  }

  /// A struct of its own, under its own key. Absent is the same as empty: all its defaults.
  template <class T>
  void group(const char* name, T& value, const GroupOptions& o) {
    open_group({name, text_of(o.about), false, false, text_of(o.example)});
    fields(*this, value);
    close_group();
  }
  /// A struct that may be absent.
  template <class T>
  void optional_group(const char* name, std::optional<T>& value, const GroupOptions& o) {
    if (!open_group({name, text_of(o.about), true, value.has_value()})) return value.reset();
    if (!value || !keeps_values()) value.emplace();
    fields(*this, *value);
    close_group();
  }
  /// A list of structs.
  template <class T>
  void list(const char* name, std::vector<T>& items, const ListOptions& o) {
    const auto labels = open_items({name, ItemsField::Type::list, o}, numbered(items.size()));
    if (!keeps_values()) items.assign(labels.size(), T{});
    for (std::size_t i = 0; i < labels.size(); ++i) visit_item(labels[i], items[i], o);
    close_items();
  }
  /// A mapping whose keys are names that people gave.
  template <class T>
  void named(const char* name, std::vector<Named<T>>& items, const ListOptions& o) {
    std::vector<std::string> names;
    for (const Named<T>& item : items) names.push_back(item.name);
    const auto labels = open_items({name, ItemsField::Type::named, o}, std::move(names));
    if (!keeps_values()) items.assign(labels.size(), Named<T>{});
    for (std::size_t i = 0; i < labels.size(); ++i) {
      items[i].name = labels[i];
      visit_item(labels[i], items[i].value, o);
    }
    close_items();
  }
  /// Fields of the mapping itself that depend on the word at `key`: one struct per word. At most once per mapping.
  template <class... Ts>
  void alternatives(const char* key, std::variant<Ts...>& value, const std::array<const char*, sizeof...(Ts)>& words,
                    const PlainOptions& o) {
    std::size_t index = value.index();
    const std::vector<std::string> all(words.begin(), words.end());
    for (const std::size_t i : open_alternatives(choice_field(
                                                     key, all, index, [&](std::size_t n) { index = n; }, o),
                                                 index)) {
      if (i != value.index() || !keeps_values()) emplace_at(value, i, std::index_sequence_for<Ts...>());
      open_alternative(i);
      std::visit([&](auto& alternative) { fields(*this, alternative); }, value);
    }
    close_alternatives();
  }

 protected:
  struct GroupField {
    std::string name, about;
    bool optional = false, present = false;
    std::string example = {};
  };
  struct ItemsField {
    enum class Type { scalars, list, named };
    std::string name;
    Type type = Type::list;
    ListOptions options;
  };
  /// Whether the values that stand in the struct are what is visited (saving), not made anew (loading, schema).
  virtual bool keeps_values() const = 0;
  virtual void scalar(const ScalarField& field) = 0;
  virtual bool open_group(const GroupField& group) = 0;  ///< false: absent, not visited, not closed
  virtual void close_group() = 0;
  /// The labels of the items to visit: names, or numbers from "1".
  virtual std::vector<std::string> open_items(const ItemsField& items, std::vector<std::string> present) = 0;
  virtual void close_items() = 0;
  /// The alternatives to visit; `index` is where the word field writes what it read.
  virtual std::vector<std::size_t> open_alternatives(const ScalarField& word, const std::size_t& index) = 0;
  virtual void open_alternative(std::size_t) {}
  virtual void close_alternatives() {}

 private:
  static std::string text_of(const char* about) { return about == nullptr ? std::string() : std::string(about); }
  static std::vector<std::string> numbered(std::size_t count);
  template <std::integral I>
  static IntegerOptions within(IntegerOptions o) {
    if constexpr (sizeof(I) < sizeof(std::int64_t)) {
      o.minimum = std::max<std::int64_t>(o.minimum, std::numeric_limits<I>::min());
      o.maximum = std::min<std::int64_t>(o.maximum, std::numeric_limits<I>::max());
    }
    return o;
  }
  template <class T, class Make>
  void scalars(const char* name, std::vector<T>& values, const ListOptions& o, const Make& make) {
    const auto labels = open_items({name, ItemsField::Type::scalars, o}, numbered(values.size()));
    if (!keeps_values()) values.assign(labels.size(), T{});
    for (std::size_t i = 0; i < labels.size(); ++i) scalar(make(labels[i], values[i]));
    close_items();
  }
  template <class T>
  void visit_item(const std::string& label, T& item, const ListOptions& o) {
    open_group({label, text_of(o.about), false, true});
    fields(*this, item);
    close_group();
  }
  template <class V, std::size_t... Is>
  static void emplace_at(V& value, std::size_t index, std::index_sequence<Is...>) {
    ((Is == index ? static_cast<void>(value.template emplace<Is>()) : static_cast<void>(0)), ...);
  }
};

}  // namespace noonhouse
