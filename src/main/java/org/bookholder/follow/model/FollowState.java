package org.bookholder.follow.model;

/** How sure the follower is of the reading position. */
public enum FollowState {
    /** The reading is followed. */
    FOLLOWING,
    /** Something that is not in the script is being said; the position holds. */
    ASIDE,
    /** There has been no evidence for a while; the whole script is being searched. */
    LOST
}
