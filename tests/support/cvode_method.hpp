// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cvode/cvode.h>

#include <memory>
#include <span>
#include <string>
#include <vector>

#include "sim/graph/house.hpp"
#include "sim/integrate/evaluation.hpp"
#include "sim/integrate/method.hpp"

namespace noonhouse {

/// How CVODE is asked to work.
struct CvodeSettings {
  double relative = 0.0;             ///< relative tolerance of the amounts [-]
  double absolute_factor = 1.0;      ///< absolute tolerance, in units of House::amount_tolerance
  bool new_start_at_breaks = false;  ///< forget the history where the lines bend (where they jump it always does)
  bool carry = true;                 ///< integrate the fluxes too; without, `carried` and the accounts stand still
  double dense_error = 0.5;          ///< most that the dense output may miss CVODE's own polynomial, in tolerances

  /// So tight that its own error may be neglected beside the method under test.
  static CvodeSettings reference() { return {.relative = 1e-9, .absolute_factor = 1e-6}; }
};

/// An independent stepping method for tests: variable-order BDF (CVODE, Hindmarsh et al. 2005, ACM Trans.
/// Math. Softw. 31, 363) with the sparse direct solver KLU, on the same right-hand side and exact Jacobian.
/// Error control, order, Newton iteration and factorisation share nothing with the project's own Stepper.
///
/// Steps end on whole ticks: CVODE's own step ends are read from its polynomial at the last tick before.
/// The dense output is the cubic Hermite of Step, laid through values and slopes of CVODE's polynomial; where
/// that misses the polynomial, the step is handed out in several pieces.
/// What the fluxes carry is integrated by Simpson's rule on each piece, so accounts close to the method's
/// error and not, as with the Stepper, to rounding. Accounts take no part in the error control.
class CvodeMethod final : public SteppingMethod {
 public:
  CvodeMethod(const House& house, const CvodeSettings& settings);
  ~CvodeMethod() override;
  CvodeMethod(const CvodeMethod&) = delete;
  CvodeMethod& operator=(const CvodeMethod&) = delete;

  const Step& advance(HouseState& state, const ChannelLine& channels, Tick limit) override;
  void cut(HouseState& state, Tick when) override;
  void restart() override { fresh_ = true; }
  const Step& last_step() const override { return step_; }
  std::span<const double> end_potentials() const override { return end_potentials_; }
  std::int64_t steps() const override;     ///< CVODE's own steps
  std::int64_t rejected() const override;  ///< steps that failed the error test or Newton's iteration
  std::int64_t new_starts() const { return new_starts_; }

 private:
  struct Solver;  // CVODE's handles, released in the right order
  static int rates_of(realtype t, N_Vector y, N_Vector rate, void* self);
  static int jacobian_of(realtype t, N_Vector y, N_Vector rate, SUNMatrix jacobian, void* self, N_Vector, N_Vector,
                         N_Vector);
  static void remember(int code, const char* module, const char* function, char* message, void* self);

  void set_up_solver();
  void start_anew(const HouseState& state);
  void move_on(const HouseState& state, Tick limit);
  void plan_pieces(Tick begin, Tick end);
  void read_ends(Tick begin, Tick end);
  double dense_miss(Tick begin, Tick end);
  void read(double t, int derivative, std::vector<double>& out);
  void begin_step(const HouseState& state);
  void end_step(HouseState& state, Tick end);
  void carry(HouseState& state);
  void channels_at(double t);
  [[noreturn]] void give_up(const HouseState& state, int code);

  const House* house_;
  CvodeSettings settings_;
  Evaluation evaluation_;
  std::unique_ptr<Solver> solver_;
  const ChannelLine* line_ = nullptr;
  bool fresh_ = true;                ///< CVODE must start anew
  Tick whole_begin_, solved_until_;  ///< what CVODE's last steps cover, in whole ticks
  Tick piece_;                       ///< length of the pieces it is handed out in
  std::vector<double> channels_, end_channels_, end_slopes_, end_potentials_, middle_, moved_, middle_fluxes_;
  std::string complaint_;
  Step step_;
  std::int64_t old_steps_ = 0, old_rejected_ = 0, new_starts_ = 0;
};

}  // namespace noonhouse
