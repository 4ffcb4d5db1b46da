/**
 * Everything the program can do for a person, each as one service. The command line and the page in the browser call
 * the same services. No service prints, reads the terminal or ends the process.
 */
@NullMarked
package org.bookholder.app;

import org.jspecify.annotations.NullMarked;
