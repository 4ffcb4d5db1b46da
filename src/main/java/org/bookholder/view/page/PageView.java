package org.bookholder.view.page;

/**
 * A page on the screen.
 *
 * @param page what it holds
 * @param scroll how far it is moved up
 * @param light 0 to 1
 */
public record PageView(ListPage page, double scroll, double light) {}
