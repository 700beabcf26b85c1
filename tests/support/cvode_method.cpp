// SPDX-License-Identifier: Apache-2.0
#include "tests/support/cvode_method.hpp"

#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_klu.h>
#include <sunmatrix/sunmatrix_sparse.h>

#include <algorithm>
#include <cmath>

#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"

namespace noonhouse {
namespace {

/// A jump, against rounding where two straight lines meet.
bool jumps(double a, double b) { return std::abs(a - b) > 1e-9 * (std::abs(a) + std::abs(b)) + 1e-12; }

/// The last whole tick not after t [s], which CVODE knows to rounding only.
Tick last_tick(double t) { return {static_cast<std::int64_t>(std::floor(t * 1000.0 + 1e-4))}; }

constexpr int kAlmostNoDelay = 10'000;  ///< inner steps without reaching the next tick that count as failure
constexpr int kKluNaturalOrder = 2;     ///< the house's states are numbered for little fill already
constexpr int kMostPieces = 64;
/// A junction's pressure gives way at this rate to the air that comes in [Pa/kg]: as stiff air does, so that CVODE
/// finds by integration, within a hundredth of a second, what our own method solves for.
constexpr double kGivesWay = 1e3;

}  // namespace

struct CvodeMethod::Solver {
  SUNContext context = nullptr;
  N_Vector amounts = nullptr, tolerance = nullptr, scratch = nullptr;
  SUNMatrix matrix = nullptr;
  SUNLinearSolver linear = nullptr;
  void* cvode = nullptr;

  ~Solver() {
    if (cvode) CVodeFree(&cvode);
    if (linear) SUNLinSolFree(linear);
    if (matrix) SUNMatDestroy(matrix);
    for (N_Vector v : {amounts, tolerance, scratch})
      if (v) N_VDestroy(v);
    if (context) SUNContext_Free(&context);
  }
};

CvodeMethod::CvodeMethod(const House& house, const CvodeSettings& settings)
    : house_(&house), settings_(settings), evaluation_(house), solver_(std::make_unique<Solver>()) {
  const std::size_t n = at(house.states), fluxes = at(house.fluxes), channels = at(house.channels);
  for (auto* v : {&step_.amounts0, &step_.rates0, &step_.amounts1, &step_.rates1, &middle_, &moved_}) v->assign(n, 0.0);
  for (auto* v : {&step_.carried0, &step_.fluxes0, &step_.carried1, &step_.fluxes1, &middle_fluxes_})
    v->assign(fluxes, 0.0);
  for (auto* v : {&channels_, &end_channels_, &end_slopes_}) v->assign(channels, 0.0);
  end_potentials_.assign(n + channels, 0.0);
  set_up_solver();
}

CvodeMethod::~CvodeMethod() = default;

void CvodeMethod::set_up_solver() {
  const auto require = [](int code) { NOON_ASSERT(code >= 0); };
  Solver& s = *solver_;
  const Pattern& pattern = house_->pattern;
  require(SUNContext_Create(nullptr, &s.context));
  for (N_Vector* v : {&s.amounts, &s.tolerance, &s.scratch}) *v = N_VNew_Serial(house_->states, s.context);
  for (std::size_t i = 0; i < at(house_->states); ++i) {
    NV_DATA_S(s.amounts)[i] = house_->initial_amounts[i];
    NV_DATA_S(s.tolerance)[i] = settings_.absolute_factor * house_->amount_tolerance[i];
  }
  s.matrix = SUNSparseMatrix(pattern.size, pattern.size, pattern.entries(), CSR_MAT, s.context);
  s.linear = SUNLinSol_KLU(s.amounts, s.matrix, s.context);
  NOON_ASSERT(s.matrix && s.linear);
  require(SUNLinSol_KLUSetOrdering(s.linear, kKluNaturalOrder));
  s.cvode = CVodeCreate(CV_BDF, s.context);
  NOON_ASSERT(s.cvode);
  require(CVodeSetErrHandlerFn(s.cvode, remember, this));
  require(CVodeInit(s.cvode, rates_of, 0.0, s.amounts));
  require(CVodeSetUserData(s.cvode, this));
  require(CVodeSVtolerances(s.cvode, settings_.relative, s.tolerance));
  require(CVodeSetLinearSolver(s.cvode, s.linear, s.matrix));
  require(CVodeSetJacFn(s.cvode, jacobian_of));
}

void CvodeMethod::remember(int, const char*, const char*, char* message, void* self) {
  static_cast<CvodeMethod*>(self)->complaint_ = message;
}

void CvodeMethod::channels_at(double t) {
  const double elapsed = t - seconds(line_->begin);
  for (std::size_t i = 0; i < channels_.size(); ++i) channels_[i] = line_->value[i] + line_->slope[i] * elapsed;
}

int CvodeMethod::rates_of(realtype t, N_Vector y, N_Vector rate, void* self) {
  auto& own = *static_cast<CvodeMethod*>(self);
  own.channels_at(t);
  double* out = NV_DATA_S(rate);
  own.evaluation_.rates(NV_DATA_S(y), own.channels_.data(), out);
  for (const int i : own.house_->junctions.states) out[i] *= kGivesWay;
  // A trial value outside the laws' range: CVODE tries a shorter step.
  return std::all_of(out, out + own.house_->states, [](double x) { return std::isfinite(x); }) ? 0 : 1;
}

int CvodeMethod::jacobian_of(realtype t, N_Vector y, N_Vector, SUNMatrix jacobian, void* self, N_Vector, N_Vector,
                             N_Vector) {
  auto& own = *static_cast<CvodeMethod*>(self);
  const Pattern& pattern = own.house_->pattern;
  own.channels_at(t);
  own.evaluation_.rates_and_jacobian(NV_DATA_S(y), own.channels_.data(), own.moved_.data());
  // CVODE clears the matrix before it asks: structure and values are laid in together.
  std::copy(pattern.row_begin.begin(), pattern.row_begin.end(), SM_INDEXPTRS_S(jacobian));
  std::copy(pattern.column.begin(), pattern.column.end(), SM_INDEXVALS_S(jacobian));
  std::copy_n(own.evaluation_.jacobian(), pattern.entries(), SM_DATA_S(jacobian));
  for (const int i : own.house_->junctions.states)
    for (int k = pattern.row_begin[at(i)]; k < pattern.row_begin[at(i) + 1]; ++k) SM_DATA_S(jacobian)[k] *= kGivesWay;
  return 0;
}

void CvodeMethod::start_anew(const HouseState& state) {
  old_steps_ = steps();
  old_rejected_ = rejected();
  ++new_starts_;
  std::copy_n(state.amounts.begin(), house_->states, NV_DATA_S(solver_->amounts));
  const int code = CVodeReInit(solver_->cvode, seconds(state.now), solver_->amounts);
  NOON_ASSERT(code == CV_SUCCESS);
  solved_until_ = state.now;
  fresh_ = false;
}

const Step& CvodeMethod::advance(HouseState& state, const ChannelLine& channels, Tick limit) {
  NOON_ASSERT(limit > state.now);
  line_ = &channels;
  channels.at(state.now, channels_.data());
  if (!std::equal(channels_.begin(), channels_.end(), end_channels_.begin(),
                  [](double a, double b) { return !jumps(a, b); }))
    fresh_ = true;
  if (settings_.new_start_at_breaks && channels.slope != end_slopes_) fresh_ = true;
  if (fresh_) start_anew(state);
  begin_step(state);
  if (state.now >= solved_until_) {
    move_on(state, limit);
    plan_pieces(state.now, solved_until_);
  }
  end_step(state, std::min(state.now + piece_, solved_until_));
  return step_;
}

/// CVODE's own steps until the next whole tick is behind it.
void CvodeMethod::move_on(const HouseState& state, Tick limit) {
  int code = CVodeSetStopTime(solver_->cvode, seconds(limit));
  if (code < 0) give_up(state, code);
  for (int tries = 0; tries < kAlmostNoDelay; ++tries) {
    double reached = 0.0;
    code = CVode(solver_->cvode, seconds(limit), solver_->amounts, &reached, CV_ONE_STEP);
    if (code < 0) give_up(state, code);
    solved_until_ = std::min(last_tick(reached), limit);
    if (solved_until_ > state.now) return;
  }
  give_up(state, CV_TOO_MUCH_WORK);
}

void CvodeMethod::read(double t, int derivative, std::vector<double>& out) {
  // A tick stands up to 1 ms before CVODE's own time: its polynomial is read slightly outside its last step.
  double now = 0.0, last = 0.0;
  CVodeGetCurrentTime(solver_->cvode, &now);
  CVodeGetLastStep(solver_->cvode, &last);
  const int code = CVodeGetDky(solver_->cvode, std::clamp(t, now - last, now), derivative, solver_->scratch);
  NOON_ASSERT(code == CV_SUCCESS);
  std::copy_n(NV_DATA_S(solver_->scratch), out.size(), out.begin());
}

/// Values and slopes at both ends, from CVODE's polynomial; the value at the beginning stands already.
void CvodeMethod::read_ends(Tick begin, Tick end) {
  step_.end = end;
  read(seconds(begin), 1, step_.rates0);
  read(seconds(end), 0, step_.amounts1);
  read(seconds(end), 1, step_.rates1);
}

/// How far the cubic through both ends misses CVODE's polynomial in the middle, in tolerances.
double CvodeMethod::dense_miss(Tick begin, Tick end) {
  const double h = seconds(end - begin);
  read(seconds(begin) + 0.5 * h, 0, middle_);
  double sum = 0.0;
  for (std::size_t i = 0; i < middle_.size(); ++i) {
    const double cubic =
        0.5 * (step_.amounts0[i] + step_.amounts1[i]) + 0.125 * h * (step_.rates0[i] - step_.rates1[i]);
    const double unit =
        settings_.absolute_factor * house_->amount_tolerance[i] + settings_.relative * std::abs(step_.amounts1[i]);
    const double miss = (cubic - middle_[i]) / unit;
    sum += miss * miss;
  }
  return std::sqrt(sum / static_cast<double>(middle_.size()));
}

/// Divides (begin, end] so that the cubic follows CVODE's polynomial: its error falls with the fourth power.
void CvodeMethod::plan_pieces(Tick begin, Tick end) {
  read_ends(begin, end);
  const double miss = dense_miss(begin, end) / settings_.dense_error;
  const int pieces = std::clamp(static_cast<int>(std::ceil(std::pow(miss, 0.25))), 1, kMostPieces);
  piece_ = Tick{((end - begin).ms + pieces - 1) / pieces};
  whole_begin_ = begin;
}

void CvodeMethod::begin_step(const HouseState& state) {
  step_.begin = state.now;
  std::copy_n(state.amounts.begin(), house_->states, step_.amounts0.begin());
  step_.carried0 = state.carried;
}

void CvodeMethod::end_step(HouseState& state, Tick end) {
  if (step_.end != end || step_.begin != whole_begin_) read_ends(step_.begin, end);
  for (const auto& batch : house_->store_batches) batch->potentials(step_.amounts1.data(), end_potentials_.data());
  line_->at(end, end_channels_.data());
  end_slopes_ = line_->slope;
  std::copy(end_channels_.begin(), end_channels_.end(), end_potentials_.begin() + house_->states);
  step_.carried1 = step_.carried0;
  if (settings_.carry) carry(state);
  std::copy(step_.amounts1.begin(), step_.amounts1.end(), state.amounts.begin());
  state.carried = step_.carried1;
  state.now = end;
}

/// Fluxes at both ends and in the middle, and their integrals by Simpson's rule.
void CvodeMethod::carry(HouseState& state) {
  const auto fluxes_at = [this](double t, const std::vector<double>& amounts, std::vector<double>& out) {
    channels_at(t);
    evaluation_.rates(amounts.data(), channels_.data(), moved_.data());
    std::copy(evaluation_.fluxes().begin(), evaluation_.fluxes().end(), out.begin());
  };
  const double t0 = seconds(step_.begin), h = seconds(step_.end) - t0;
  read(t0 + 0.5 * h, 0, middle_);
  fluxes_at(t0, step_.amounts0, step_.fluxes0);
  fluxes_at(t0 + 0.5 * h, middle_, middle_fluxes_);
  fluxes_at(t0 + h, step_.amounts1, step_.fluxes1);
  for (std::size_t j = 0; j < middle_fluxes_.size(); ++j) {
    const double moved = h / 6.0 * (step_.fluxes0[j] + 4.0 * middle_fluxes_[j] + step_.fluxes1[j]);
    step_.carried1[j] += moved;
    const int from = house_->flux_from[j], to = house_->flux_to[j];
    if (from >= house_->states) state.amounts[at(from)] -= moved;
    if (to >= house_->states) state.amounts[at(to)] += moved;
  }
}

void CvodeMethod::cut(HouseState& state, Tick when) {
  if (when == step_.end) return;
  std::vector<double>& carried = middle_fluxes_;
  step_.carried_at(when, carried.data());
  for (std::size_t j = 0; j < carried.size(); ++j) {
    const double back = carried[j] - state.carried[j];
    const int from = house_->flux_from[j], to = house_->flux_to[j];
    if (from >= house_->states) state.amounts[at(from)] -= back;
    if (to >= house_->states) state.amounts[at(to)] += back;
    state.carried[j] = carried[j];
  }
  step_.amounts_at(when, state.amounts.data());
  state.now = when;
  restart();
}

std::int64_t CvodeMethod::steps() const {
  long now = 0;
  CVodeGetNumSteps(solver_->cvode, &now);
  return old_steps_ + now;
}

std::int64_t CvodeMethod::rejected() const {
  long error_tests = 0, newton = 0;
  CVodeGetNumErrTestFails(solver_->cvode, &error_tests);
  CVodeGetNumStepSolveFails(solver_->cvode, &newton);
  return old_rejected_ + error_tests + newton;
}

void CvodeMethod::give_up(const HouseState& state, int code) {
  std::size_t worst = 0;
  double largest = -1.0;
  if (CVodeGetEstLocalErrors(solver_->cvode, solver_->scratch) == CV_SUCCESS)
    for (std::size_t i = 0; i < at(house_->states); ++i) {
      const double units = std::abs(NV_DATA_S(solver_->scratch)[i]) / NV_DATA_S(solver_->tolerance)[i];
      if (units > largest) {
        largest = units;
        worst = i;
      }
    }
  throw UserError(ErrorKind::step_collapse, "CVODE cannot go on at " + std::to_string(seconds(state.now)) +
                                                " s (status " + std::to_string(code) + "), '" +
                                                house_->state_names[worst] + "' resists most: " + complaint_);
}

}  // namespace noonhouse
