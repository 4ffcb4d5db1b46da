package org.bookholder.desk.http;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.jetty.server.Request;

/**
 * The part of an address that belongs to one device: {@code /in/…}. A browser sends a cookie to every port of a machine, but only to
 * addresses below the cookie's path; nobody else knows this one, so no other program gets the cookie.
 */
final class DevicePlace {
    private static final Pattern PLACE = Pattern.compile("/in/[\\w-]{10,40}(/.*)");

    private DevicePlace() {}

    /** The address of a device's pages, without a slash at its end. */
    static String of(String place) {
        return "/in/" + place;
    }

    /** The path of a request, without the device's part. */
    static String inside(Request request) {
        String path = Request.getPathInContext(request);
        Matcher place = PLACE.matcher(path);
        return place.matches() ? place.group(1) : path;
    }
}
