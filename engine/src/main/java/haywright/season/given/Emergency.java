package haywright.season.given;

import haywright.quantity.Unit;

/** From when on feed did not last. */
public final class Emergency {
    /** kg as fed. */
    public static final double KG = Unit.TON.toBase(Facts.value("lasting_hay"));

    private Emergency() {}
}
