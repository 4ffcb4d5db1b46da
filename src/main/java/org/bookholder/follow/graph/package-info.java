/** A prepared script as a graph, and the search for the path through it that explains what was heard. */
@NullMarked
package org.bookholder.follow.graph;

import org.jspecify.annotations.NullMarked;
