package haywright.app.document;

import haywright.ranch.Ranch;

/** A ranch that is short of hay after a dry summer. It and all its figures are invented, and it says so. */
public final class BentBucket {
    private BentBucket() {}

    public static Ranch ranch() {
        return TinLantern.read("bent-bucket.json");
    }
}
