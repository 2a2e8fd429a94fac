package haywright.bench;

import haywright.app.document.TinLantern;
import haywright.feeding.Rations;
import haywright.feeding.worth.WorthOfASample;
import haywright.ration.Doubts;
import haywright.ration.LeastCostRation;
import haywright.ration.Ration;
import haywright.ration.SurenessCurve;
import java.time.LocalDate;
import java.util.Locale;

/**
 * On the demo: what being surer costs in twenty points, each doubt of a ration, and what one more sample of each lot is
 * worth, in processor time and as ratios to one sure ration to the gram with its rows.
 */
final class Worth {
    private static final int TIMES = 20;

    private Worth() {}

    public static void main(String[] ignored) {
        Locale.setDefault(Locale.ROOT);
        var ranch = TinLantern.ranch();
        var rations = new Rations(ranch, ranch.settings().today(LocalDate.EPOCH));
        double one = 0;
        for (var group : ranch.groups().values()) {
            if (rations.ration(group) instanceof Ration ration) {
                var asked = rations.question(group);
                var exact = new LeastCostRation(
                        asked.offered(),
                        asked.need(),
                        asked.options(),
                        asked.sureness(),
                        LeastCostRation.Amounts.EXACT);
                double solve = milliseconds(exact::solve);
                double plain =
                        milliseconds(() -> new LeastCostRation(asked.offered(), asked.need(), asked.options()).solve());
                double fed = milliseconds(asked::solve);
                double bales = milliseconds(() -> rations.wholeBales(group, ration));
                double curve = milliseconds(() -> SurenessCurve.of(asked, ration));
                double doubts = milliseconds(() -> Doubts.of(ration));
                one = Math.max(one, solve);
                System.out.printf(
                        "%s: sure %.1f times plain, as people feed %.1f times sure, whole bales %.1f times sure (%.0f ms)%n",
                        group.name(), solve / plain, fed / solve, bales / solve, bales);
                System.out.printf(
                        "%s: a ration %.1f ms; %d points %.1f ms, %.1f of it; doubts %.2f of it%n",
                        group.name(),
                        solve,
                        SurenessCurve.of(asked, ration).points().size(),
                        curve,
                        curve / solve,
                        doubts / solve);
            }
        }
        double together = milliseconds(() -> new Rations(ranch, rations.day()).plan());
        System.out.printf(
                "all groups together until grass, on a fresh yard: %.0f ms, %.0f rations%n", together, together / one);
        double all = 0;
        for (var lot : ranch.lots().values()) {
            WorthOfASample.of(rations, lot); // warm
            double from = Cpu.seconds();
            var worth = WorthOfASample.of(rations, lot);
            double took = 1e3 * (Cpu.seconds() - from);
            all += took;
            System.out.printf(
                    "%s: %.0f ms, %.0f rations; worth %.0f (%.0f to %.0f)%n",
                    lot.name(), took, took / one, worth.worthUsd(), worth.lowUsd(), worth.highUsd());
        }
        System.out.printf("all lots: %.0f ms%n", all);
    }

    private static double milliseconds(Runnable work) {
        for (int i = 0; i < TIMES; i++) {
            work.run();
        }
        double from = Cpu.seconds();
        for (int i = 0; i < TIMES; i++) {
            work.run();
        }
        return 1e3 * (Cpu.seconds() - from) / TIMES;
    }
}
