// The pass of the carriage, the one action that knits.
#pragma once

#include "knitting/machine.hpp"

namespace punchwright {

void make_pass(Outcome& outcome, const KnitPass& pass);

} // namespace punchwright
