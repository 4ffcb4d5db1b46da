/** How problems with a user's input or machine are reported; see {@link org.bookholder.problem.ProblemException}. */
@NullMarked
package org.bookholder.problem;

import org.jspecify.annotations.NullMarked;
