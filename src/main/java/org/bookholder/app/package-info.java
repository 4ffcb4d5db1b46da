/** What the program can do for a person, each thing as one service that the command line and the page in the browser both call. No service prints, reads the terminal or ends the process. */
@NullMarked
package org.bookholder.app;

import org.jspecify.annotations.NullMarked;
