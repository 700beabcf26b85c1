// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <cmath>
#include <cstddef>

namespace noonhouse {

/// A value with its derivatives by N inputs: forward differentiation, exact to rounding.
/// A physical law written once as a template over its scalar runs on double for values and on Dual
/// for values with derivatives. Comparisons look at the value only, so a law's branch is the same.
template <int N>
struct Dual {
  double value = 0.0;
  std::array<double, static_cast<std::size_t>(N)> grad{};

  constexpr Dual() = default;
  constexpr Dual(double v) : value(v) {}  ///< implicit: a constant is a Dual

  /// The k-th input itself: derivative one by itself, zero by the others.
  static constexpr Dual input(double v, int k) {
    Dual d(v);
    d.grad[static_cast<std::size_t>(k)] = 1.0;
    return d;
  }

  constexpr Dual& operator+=(const Dual& b) { return *this = *this + b; }
  constexpr Dual& operator-=(const Dual& b) { return *this = *this - b; }
  constexpr Dual& operator*=(const Dual& b) { return *this = *this * b; }
  constexpr Dual& operator/=(const Dual& b) { return *this = *this / b; }

  friend constexpr Dual operator-(const Dual& a) { return combine(-a.value, a, -1.0); }
  friend constexpr Dual operator+(const Dual& a, const Dual& b) { return combine(a.value + b.value, a, 1.0, b, 1.0); }
  friend constexpr Dual operator-(const Dual& a, const Dual& b) { return combine(a.value - b.value, a, 1.0, b, -1.0); }
  friend constexpr Dual operator*(const Dual& a, const Dual& b) {
    return combine(a.value * b.value, a, b.value, b, a.value);
  }
  friend constexpr Dual operator/(const Dual& a, const Dual& b) {
    const double quotient = a.value / b.value;
    return combine(quotient, a, 1.0 / b.value, b, -quotient / b.value);
  }
  friend constexpr Dual operator+(const Dual& a, double b) { return shifted(a, a.value + b); }
  friend constexpr Dual operator+(double a, const Dual& b) { return shifted(b, a + b.value); }
  friend constexpr Dual operator-(const Dual& a, double b) { return shifted(a, a.value - b); }
  friend constexpr Dual operator-(double a, const Dual& b) { return combine(a - b.value, b, -1.0); }
  friend constexpr Dual operator*(const Dual& a, double b) { return combine(a.value * b, a, b); }
  friend constexpr Dual operator*(double a, const Dual& b) { return combine(a * b.value, b, a); }
  friend constexpr Dual operator/(const Dual& a, double b) { return combine(a.value / b, a, 1.0 / b); }
  friend constexpr Dual operator/(double a, const Dual& b) {
    const double quotient = a / b.value;
    return combine(quotient, b, -quotient / b.value);
  }

  friend constexpr bool operator<(const Dual& a, const Dual& b) { return a.value < b.value; }
  friend constexpr bool operator>(const Dual& a, const Dual& b) { return a.value > b.value; }
  friend constexpr bool operator<=(const Dual& a, const Dual& b) { return a.value <= b.value; }
  friend constexpr bool operator>=(const Dual& a, const Dual& b) { return a.value >= b.value; }
  friend constexpr bool operator==(const Dual& a, const Dual& b) { return a.value == b.value; }

  friend Dual exp(const Dual& a) {
    const double e = std::exp(a.value);
    return combine(e, a, e);
  }
  friend Dual log(const Dual& a) { return combine(std::log(a.value), a, 1.0 / a.value); }
  /// The slope at zero is taken as zero: laws keep away from it by a smooth floor.
  friend Dual sqrt(const Dual& a) {
    const double root = std::sqrt(a.value);
    return combine(root, a, root > 0.0 ? 0.5 / root : 0.0);
  }
  friend Dual pow(const Dual& a, double power) {
    const double p = std::pow(a.value, power);
    return combine(p, a, a.value != 0.0 ? power * p / a.value : 0.0);
  }
  friend Dual cbrt(const Dual& a) {
    const double c = std::cbrt(a.value);
    return combine(c, a, c != 0.0 ? 1.0 / (3.0 * c * c) : 0.0);
  }
  friend Dual tanh(const Dual& a) {
    const double t = std::tanh(a.value);
    return combine(t, a, 1.0 - t * t);
  }
  friend Dual sin(const Dual& a) { return combine(std::sin(a.value), a, std::cos(a.value)); }
  friend Dual cos(const Dual& a) { return combine(std::cos(a.value), a, -std::sin(a.value)); }
  friend Dual abs(const Dual& a) { return a.value < 0.0 ? -a : a; }
  friend Dual fabs(const Dual& a) { return a.value < 0.0 ? -a : a; }

 private:
  static constexpr Dual shifted(const Dual& a, double v) {
    Dual out = a;
    out.value = v;
    return out;
  }
  static constexpr Dual combine(double v, const Dual& a, double da) {
    Dual out(v);
    for (std::size_t k = 0; k < out.grad.size(); ++k) out.grad[k] = da * a.grad[k];
    return out;
  }
  static constexpr Dual combine(double v, const Dual& a, double da, const Dual& b, double db) {
    Dual out(v);
    for (std::size_t k = 0; k < out.grad.size(); ++k) out.grad[k] = da * a.grad[k] + db * b.grad[k];
    return out;
  }
};

/// The value of a scalar, whether or not it carries derivatives.
constexpr double value_of(double x) { return x; }
template <int N>
constexpr double value_of(const Dual<N>& x) {
  return x.value;
}

}  // namespace noonhouse
