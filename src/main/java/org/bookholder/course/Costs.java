package org.bookholder.course;

/**
 * What a course costs and brings in. All money in one currency.
 *
 * @param currency how it is written, such as USD
 * @param equipment what is to be bought for it
 * @param hour what an hour of one's own work is worth
 * @param hired what an editor asks for the whole course; 0 if nobody was asked
 * @param price of one sale
 * @param kept the part of the price that is left after fees and taxes, above 0 to 1
 */
public record Costs(String currency, double equipment, double hour, double hired, double price, double kept) {}
