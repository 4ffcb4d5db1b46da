package org.bookholder.view.settings;

/**
 * A monitor of this machine, for the choice of where the reading window opens. Positions and sizes in screen units.
 *
 * @param number its number, from 1, in the system's order
 * @param name its name as the system reports it; two of the same model may share it
 * @param x left end of its picture on the desktop
 * @param y top of its picture on the desktop
 * @param width width of its picture
 * @param height height of its picture
 * @param millimetres height of its picture in mm, 0 if it is not known
 */
public record Display(int number, String name, int x, int y, int width, int height, double millimetres) {}
