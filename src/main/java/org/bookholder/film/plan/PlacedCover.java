package org.bookholder.film.plan;

import org.bookholder.script.model.Cover;

/**
 * A picture or clip of the author's at its place in a film.
 *
 * @param cover what the script says of it
 * @param from number of the first picture of the film that shows it
 * @param to number of the picture behind its last
 * @param shot its pictures
 */
public record PlacedCover(Cover cover, long from, long to, Shot shot) {}
