package org.bookholder.follow.model;

import org.bookholder.timing.StreamTime;

/**
 * Speech that is not in the script.
 *
 * @param take take number, from 1
 * @param start when it begins
 * @param end when it ends
 * @param said what was said, as the open ear understood it; empty if the open ear has not reported yet
 * @param line the line after which it was said, 0 if before the first
 */
public record Aside(int take, StreamTime start, StreamTime end, String said, int line) {}
