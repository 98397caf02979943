#pragma once

#include "core/checks/check.h"

namespace lidwright {

extern const Check kHeadStep;     ///< step, slope, scarf and string tree clear of nut and tuners
extern const Check kHeadHoles;    ///< wood about the post holes
extern const Check kHeadPlates;   ///< gear plates clear of one another and on the head
extern const Check kHeadPost;     ///< posts and bushes against the head's thickness
extern const Check kHeadBreak;    ///< how far the strings bend down over the nut
extern const Check kHeadSplay;    ///< how far strings turn aside at the nut
extern const Check kHeadStrings;  ///< strings clear of other posts and of the head

/// The head made `length` long, with a longer stick where it needs one.
Remedy headLengthRemedy(const CheckInput& in, double length);

}  // namespace lidwright
