/** The page served: the only home of the web server; start at {@link org.bookholder.desk.http.DeskServer}. */
@NullMarked
package org.bookholder.desk.http;

import org.jspecify.annotations.NullMarked;
