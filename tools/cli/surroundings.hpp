// SPDX-License-Identifier: Apache-2.0
#pragma once

/// What the program finds around it.
namespace noonhouse {

/// Columns of the terminal; 100 where standard output is none.
int terminal_width();
/// Whether the locale writes UTF-8, as every usual one does; then shades can be drawn.
bool utf8_terminal();
/// The number asked for; 0 stands for as many as the machine runs at once.
int threads_or_all(int asked);

}  // namespace noonhouse
