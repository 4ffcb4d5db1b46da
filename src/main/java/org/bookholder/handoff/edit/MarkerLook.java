package org.bookholder.handoff.edit;

import org.bookholder.cutlist.CutMarker;

/**
 * How a marker looks in an editing program.
 *
 * @param name its name
 * @param colour its colour, named as in OpenTimelineIO (Marker.Color in its documentation of schemas); the comments of
 *     an edit decision list accept these names too
 */
record MarkerLook(String name, String colour) {
    static MarkerLook of(CutMarker marker) {
        return switch (marker.kind()) {
            case PICKUP -> new MarkerLook("pickup", "RED");
            case FIX -> new MarkerLook("fix", "ORANGE");
            case NOTE -> new MarkerLook("note", "GREEN");
            case ASIDE -> new MarkerLook("aside", "CYAN");
            case DIRECTION -> new MarkerLook("direction", "BLUE");
        };
    }
}
