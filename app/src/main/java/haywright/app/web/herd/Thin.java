package haywright.app.web.herd;

import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.app.words.ration.RegainWords;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.Regain;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Cattle that are to calve below the score wanted, and what it takes to bring them there.
 *
 * @param says what it takes, in words
 * @param isCounted whether their need has it already
 */
public record Thin(Group group, String says, boolean isCounted) {
    private static final int NO_LOSS_DAYS = 60;

    /** Name of the button, and what it holds for cattle that are to stay as they are. */
    static final String TO = "to";

    static final String HOLD = "hold";

    /** Where to go on: the page of its ration, or the herd. */
    private static final String THEN = "then";

    static void routes(Routes on) {
        on.post("herd/{group}/regain", Thin::change);
    }

    /** Empty where they are to calve in the condition wanted, or nothing is to calve. */
    public static Optional<Thin> of(Group group, LocalDate today) {
        if (!GroupForm.calves(group.animals())) {
            return Optional.empty();
        }
        boolean counted = Regain.of(group, today).isPresent();
        var wanted = counted ? group : group.wanting(null);
        return Regain.of(wanted, today).map(regain -> {
            var takes = "They score %s. Calving at %s by %s takes %s more per head per day."
                    .formatted(
                            RegainWords.score(group.conditionScore()),
                            RegainWords.score(Regain.planned(wanted)),
                            Show.date(group.firstCalving().orElseThrow()),
                            NeedFigures.mcal(regain.nem()));
            var fast = regain.isFast()
                    ? " That is over half a score a month, more than most hay can do: talk to your nutritionist."
                    : "";
            return new Thin(group, takes + fast + noLoss(group, today), counted);
        });
    }

    /** {@code Hold them at 4}. */
    public String button() {
        return isCounted
                ? "Hold them at " + RegainWords.score(group.conditionScore())
                : "Bring them to " + RegainWords.score(Regain.planned(group.wanting(null)));
    }

    public String to() {
        return isCounted ? HOLD : "";
    }

    /** Said wherever cattle are to calve below the score wanted; empty for others. Common practice, no source. */
    static String noLoss(Group group, LocalDate today) {
        if (!GroupForm.calves(group.animals()) || group.conditionScore() >= Regain.usual(group)) {
            return "";
        }
        return group.firstCalving()
                .filter(first -> !first.isBefore(today))
                .map(first -> " Don’t let them lose condition in the last %d days before calving, from %s on."
                        .formatted(NO_LOSS_DAYS, Show.date(first.minusDays(NO_LOSS_DAYS))))
                .orElse("");
    }

    private static void change(Page page) {
        var group = GroupPages.group(page);
        var form = page.posted("herd/" + group.id() + "/regain");
        boolean hold = HOLD.equals(page.http().formParam(TO));
        page.save(
                form,
                (hold ? "Held at the score they have: " : "To calve at the usual score: ") + group.name(),
                ranch -> ranch.with(hold ? group.holding() : group.wanting(null)),
                "bench".equals(page.http().formParam(THEN)) ? "bench/" + group.id() : "herd");
    }
}
