package org.bookholder.view.page;

/**
 * A page on the screen.
 *
 * @param page its contents
 * @param scroll how far it is scrolled, in pixels
 * @param light opacity, 0 to 1
 */
public record PageView(ListPage page, double scroll, double light) {}
