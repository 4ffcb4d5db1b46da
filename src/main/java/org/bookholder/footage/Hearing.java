package org.bookholder.footage;

/**
 * How a take is heard in a file of footage.
 *
 * @param take take number, from 1
 * @param channels the channels in which it is clearest
 * @param clear how far the voice rises there out of what is heard between the words, in dB
 */
public record Hearing(int take, Channels channels, double clear) {}
