package haywright.season.given;

import haywright.quantity.Kind;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import org.jspecify.annotations.Nullable;

/**
 * What is meant to be done with a lot beside feeding it.
 *
 * @param sells dollars a kg as fed at which some can be sold; 0 where none is
 * @param faceADay least kg as fed that come off its face a day once it is open, fed or not, or the face spoils; 0 for none
 * @param isFaceSaid whether the ranch said so; else it is what is usual
 * @param isOpen whether its face is open on the first day
 * @param keep kg as fed that are kept clean until the first calves come
 */
public record Meant(double sells, double faceADay, boolean isFaceSaid, boolean isOpen, double keep) {
    static final Meant NOTHING = new Meant(0, 0, false, false, 0);

    /**
     * @param kg as fed that lie there
     * @param mayBeFed whether some group may have it; what waits for a test is covered up till then, and nothing comes off it
     */
    static Meant of(Ranch ranch, @Nullable Lot lot, double kg, boolean mayBeFed) {
        if (lot == null) {
            return NOTHING;
        }
        var use = lot.use();
        var sells = use == null ? null : use.sells();
        var keep = use == null ? null : use.keep();
        return new Meant(
                sells == null ? 0 : sells.in(Unit.DOLLAR_PER_KG),
                mayBeFed ? face(lot, kg) : 0,
                use != null && use.face() != null,
                isFed(ranch, lot),
                keep == null ? 0 : Math.min(kg, keep.base()));
    }

    private static double face(Lot lot, double kg) {
        var along = lot.stock().alongFace();
        var said = lot.use() == null ? null : lot.use().face();
        if (said != null && said.unit().kind() == Kind.MASS) {
            return said.base();
        }
        if (along.isEmpty() || !(along.getAsDouble() > 0)) {
            return 0;
        }
        double meters = said == null ? Unit.INCH.toBase(Facts.value("face_inches")) : said.base();
        return kg * meters / along.getAsDouble();
    }

    /** Whether a week's record or what is fed now says so. */
    private static boolean isFed(Ranch ranch, Lot lot) {
        return ranch.weeks().values().stream().anyMatch(week -> week.fed().containsKey(lot.id()))
                || ranch.fedNow().values().stream()
                        .anyMatch(now -> now.amounts().containsKey(lot.id()));
    }
}
