package org.bookholder.course;

/**
 * Costs and income of a course. All money is in one currency.
 *
 * @param currency how it is written, such as USD
 * @param equipment cost of equipment to buy
 * @param hour value of an hour of one's own work
 * @param hired an editor's quote for the whole course; 0 if there is none
 * @param price of one sale
 * @param kept the share of the price that is left after fees and taxes, above 0, at most 1
 */
public record Costs(String currency, double equipment, double hour, double hired, double price, double kept) {}
