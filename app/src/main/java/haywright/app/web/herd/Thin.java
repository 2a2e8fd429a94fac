package haywright.app.web.herd;

import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
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

    static void routes(Routes on) {
        on.post("herd/{group}/regain", Thin::change);
    }

    /** Empty where they are to calve in the condition wanted, or nothing is to calve. */
    public static Optional<Thin> of(Group group, LocalDate today) {
        if (!GroupForm.calves(group.animals())) {
            return Optional.empty();
        }
        return Regain.of(group.wanting(Regain.wanted(group)), today).map(regain -> {
            var takes = "They score %s. Calving at %s by %s takes %s more per head per day."
                    .formatted(
                            Show.significant(group.conditionScore(), 3),
                            Show.significant(Regain.wanted(group), 3),
                            Show.date(group.firstCalving().orElseThrow()),
                            NeedFigures.mcal(regain.nem()));
            var fast = regain.isFast()
                    ? " That is over half a score a month, more than most hay can do: talk to your nutritionist."
                    : "";
            return new Thin(group, takes + fast + noLoss(group, today), group.wantedScore() != null);
        });
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
        boolean count = group.wantedScore() == null;
        page.save(
                form,
                (count ? "Regain of condition added to the need: " : "Regain of condition removed from the need: ")
                        + group.name(),
                ranch -> ranch.with(group.wanting(count ? (Double) Regain.wanted(group) : null)),
                "herd");
    }
}
