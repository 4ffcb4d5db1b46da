/** Serves the desk over HTTP, the only package that uses the web server; start at {@link org.bookholder.desk.http.DeskServer}. */
@NullMarked
package org.bookholder.desk.http;

import org.jspecify.annotations.NullMarked;
