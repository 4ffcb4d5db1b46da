package org.bookholder.follow.model;

import org.bookholder.timing.StreamTime;

/**
 * When a script word was read.
 *
 * @param word word of the line, from 1
 * @param start when it begins
 * @param end when it ends
 */
public record WordTime(int word, StreamTime start, StreamTime end) {}
