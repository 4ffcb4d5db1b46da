package org.bookholder.handoff.edit;

import org.bookholder.cutlist.CutMarker;

/**
 * How a marker looks in an editing program.
 *
 * @param name what it is called
 * @param colour its colour, by a name that OpenTimelineIO has (Marker.Color in its documentation of schemas) and that the
 *     comments of an edit decision list take, too
 */
record MarkerLook(String name, String colour) {
    static MarkerLook of(CutMarker marker) {
        return switch (marker.kind()) {
            case PICKUP -> new MarkerLook("pickup", "RED");
            case FIX -> new MarkerLook("fix", "ORANGE");
            case NOTE -> new MarkerLook("note", "GREEN");
            case ASIDE -> new MarkerLook("aside", "CYAN");
        };
    }
}
