// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <memory>
#include <vector>

#include "sim/contract/law.hpp"
#include "sim/contract/store.hpp"

namespace noonhouse {

/// All stores of one kind. One indirect call serves the whole kind; the loop over nodes is direct.
class StoreBatch {
 public:
  virtual ~StoreBatch() = default;
  /// Potentials p from amounts y, both indexed by state.
  virtual void potentials(const double* y, double* p) const = 0;
  /// The same, with slopes: slope[2i] = dp_i/dy_i; slope[2i+1] = dp_i/d(the node's other state), 0 if none.
  virtual void slopes(const double* y, double* p, double* slope) const = 0;
  virtual void amounts(const double* p, double* y) const = 0;
};

/// All exchanges of one law.
class ExchangeBatch {
 public:
  virtual ~ExchangeBatch() = default;
  /// Fluxes q of this batch, laid out [exchange][flux], from all potentials p.
  virtual void fluxes(const double* p, double* q) const = 0;
  /// The same, with derivatives g laid out [exchange][flux][input].
  virtual void derivatives(const double* p, double* q, double* g) const = 0;
  /// Adds to dq what the fluxes change by along a direction d of all potentials, from derivatives g.
  virtual void add_change(const double* g, const double* d, double* dq) const = 0;
};

template <StoreKind T>
class StoresOf final : public StoreBatch {
 public:
  static constexpr std::size_t kN = static_cast<std::size_t>(T::kStates);
  /// first_state is filled in when the house is compiled.
  std::vector<T> stores;
  std::vector<int> first_state;

  void potentials(const double* y, double* p) const override {
    for (std::size_t i = 0; i < stores.size(); ++i) {
      std::array<double, kN> amount, potential;
      gather(y, i, amount);
      stores[i].potentials(amount, potential);
      for (std::size_t k = 0; k < kN; ++k) p[at(i, k)] = potential[k];
    }
  }
  void slopes(const double* y, double* p, double* slope) const override {
    for (std::size_t i = 0; i < stores.size(); ++i) {
      std::array<Dual<T::kStates>, kN> amount, potential;
      for (std::size_t k = 0; k < kN; ++k) amount[k] = Dual<T::kStates>::input(y[at(i, k)], static_cast<int>(k));
      stores[i].potentials(amount, potential);
      for (std::size_t k = 0; k < kN; ++k) {
        p[at(i, k)] = potential[k].value;
        slope[2 * at(i, k)] = potential[k].grad[k];
        slope[2 * at(i, k) + 1] = kN == 2 ? potential[k].grad[kN - 1 - k] : 0.0;
      }
    }
  }
  void amounts(const double* p, double* y) const override {
    for (std::size_t i = 0; i < stores.size(); ++i) {
      std::array<double, kN> amount, potential;
      gather(p, i, potential);
      stores[i].amounts(potential, amount);
      for (std::size_t k = 0; k < kN; ++k) y[at(i, k)] = amount[k];
    }
  }

 private:
  std::size_t at(std::size_t i, std::size_t k) const { return static_cast<std::size_t>(first_state[i]) + k; }
  void gather(const double* from, std::size_t i, std::array<double, kN>& out) const {
    for (std::size_t k = 0; k < kN; ++k) out[k] = from[at(i, k)];
  }
};

template <ExchangeLaw L>
class ExchangesOf final : public ExchangeBatch {
 public:
  static constexpr std::size_t kIn = static_cast<std::size_t>(L::kInputs);
  static constexpr std::size_t kOut = static_cast<std::size_t>(L::kFluxes);
  std::vector<L> laws;
  /// Positions of the inputs in the potential array; filled in when the house is compiled.
  std::vector<std::array<int, kIn>> inputs;

  void fluxes(const double* p, double* q) const override {
    for (std::size_t e = 0; e < laws.size(); ++e) {
      std::array<double, kIn> in;
      for (std::size_t k = 0; k < kIn; ++k) in[k] = p[static_cast<std::size_t>(inputs[e][k])];
      std::array<double, kOut> out;
      laws[e].flux(in, out);
      for (std::size_t j = 0; j < kOut; ++j) q[e * kOut + j] = out[j];
    }
  }
  void derivatives(const double* p, double* q, double* g) const override {
    for (std::size_t e = 0; e < laws.size(); ++e) {
      std::array<Dual<L::kInputs>, kIn> in;
      for (std::size_t k = 0; k < kIn; ++k)
        in[k] = Dual<L::kInputs>::input(p[static_cast<std::size_t>(inputs[e][k])], static_cast<int>(k));
      std::array<Dual<L::kInputs>, kOut> out;
      laws[e].flux(in, out);
      for (std::size_t j = 0; j < kOut; ++j) {
        q[e * kOut + j] = out[j].value;
        for (std::size_t k = 0; k < kIn; ++k) g[(e * kOut + j) * kIn + k] = out[j].grad[k];
      }
    }
  }
  void add_change(const double* g, const double* d, double* dq) const override {
    for (std::size_t e = 0; e < laws.size(); ++e)
      for (std::size_t j = 0; j < kOut; ++j) {
        double sum = 0.0;
        for (std::size_t k = 0; k < kIn; ++k) sum += g[(e * kOut + j) * kIn + k] * d[inputs[e][k]];
        dq[e * kOut + j] += sum;
      }
  }
};

}  // namespace noonhouse
