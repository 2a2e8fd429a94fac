package haywright.bench;

import haywright.lp.Conflict;
import haywright.lp.Infeasible;
import haywright.lp.LinearProgram;
import haywright.lp.LinearProgram.Row;
import haywright.lp.Optimum;
import haywright.lp.Outcome;
import haywright.lp.Range;
import haywright.lp.Session;
import haywright.lp.Unbounded;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import java.util.zip.GZIPInputStream;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;

/**
 * Solves MPS files (also gzipped) with lp and with ojAlgo, which reads lp's own MPS, and prints both objectives, the
 * times as a ratio, how well lp's duals prove its plan, and how they compare with solving again. Ends with 1 if anything
 * disagrees.
 */
public final class MpsRun {
    private static final double AGREES = 1e-6;
    private static final double ENOUGH_SECONDS = 1;
    private static final double LONG_SECONDS = 20;
    private static final int FEW_RUNS = 4;
    private static final long PATIENCE_MILLIS = 120_000;
    private static final int RESOLVED_ROWS = 5;

    private MpsRun() {}

    public static void main(String[] files) throws IOException {
        if (files.length == 0) {
            System.err.println("Which MPS files?");
            System.exit(2);
        }
        boolean agree = true;
        for (String file : files) {
            agree &= run(Path.of(file));
        }
        System.exit(agree ? 0 : 1);
    }

    private static boolean run(Path file) throws IOException {
        LinearProgram program = LinearProgram.fromMps(text(file));
        System.out.printf(
                "%s: %,d rows, %,d columns%n",
                file.getFileName(), program.rows().size(), program.columns().size());
        byte[] mps = program.toMps().getBytes(StandardCharsets.UTF_8);
        Timed<Outcome> ours = Timed.best(program::solve);
        Timed<Optimisation.Result> other = Timed.best(() -> ojAlgo(mps), MpsRun::solved);
        double ratio = other.seconds / ours.seconds;
        if (ours.answer instanceof Optimum best) {
            return optimum(program, best, other.answer, ratio);
        }
        if (ours.answer instanceof Infeasible no) {
            Timed<Conflict> why = Timed.best(no::why);
            long rows = why.answer.limits().stream().filter(l -> l.onRow()).count();
            System.out.printf(
                    "  lp: infeasible, %d rows and %d bounds conflict, found in %.3g times that: %s%n",
                    rows, why.answer.limits().size() - rows, why.seconds / ours.seconds, shortened(why.answer.names()));
        } else if (ours.answer instanceof Unbounded runaway) {
            System.out.printf("  lp: unbounded along %s%n", runaway.column());
        }
        System.out.printf(
                "  ojAlgo: %s; ojAlgo takes %.3g times lp's time to say so%n", other.answer.getState(), ratio);
        return !other.answer.getState().isFeasible();
    }

    private static boolean optimum(LinearProgram program, Optimum best, Optimisation.Result other, double ratio) {
        double ours = program.maximizing() ? -best.objective() : best.objective();
        double apart = Math.abs(other.getValue() - ours) / Math.max(1, Math.abs(ours));
        Proof proof = Proof.of(best);
        Resolved resolved = Resolved.some(best);
        System.out.printf("  objective    lp %.10g, ojAlgo %.10g (%s)%n", ours, other.getValue(), other.getState());
        System.out.printf("               apart %.1e; ojAlgo takes %.3g times lp's time%n", apart, ratio);
        System.out.printf(
                "  lp's proof   limits %.0e, reduced costs %.0e, slackness %.0e, gap %.0e%n",
                proof.broken(), proof.priced(), proof.slack(), proof.gap());
        System.out.printf(
                "  duals        %d limits moved and solved again: worst difference %.0e%n",
                resolved.count, resolved.worst);
        boolean agrees =
                other.getState().isOptimal() && apart < AGREES && proof.worst() < AGREES && resolved.worst < AGREES;
        if (!agrees) {
            System.out.println("  DISAGREES");
        }
        return agrees;
    }

    private static String shortened(List<String> names) {
        return names.size() <= 6 ? names.toString() : names.subList(0, 6) + " and more";
    }

    static ExpressionsBasedModel ojAlgo(byte[] mps) {
        var model = ExpressionsBasedModel.parse(new ByteArrayInputStream(mps), ExpressionsBasedModel.FileFormat.MPS);
        model.options.time_abort = PATIENCE_MILLIS;
        return model;
    }

    private static Optimisation.Result solved(ExpressionsBasedModel model) {
        return model.minimise();
    }

    private static String text(Path file) throws IOException {
        try (InputStream raw = Files.newInputStream(file);
                InputStream in = file.toString().endsWith(".gz") ? new GZIPInputStream(raw) : raw) {
            return new String(in.readAllBytes(), StandardCharsets.ISO_8859_1);
        }
    }

    /** An answer and the least time it took, of runs for a second. */
    private record Timed<T>(T answer, double seconds) {
        static <T> Timed<T> best(Supplier<T> work) {
            return best(() -> work, Supplier::get);
        }

        /** @param prepare is not timed */
        static <P, T> Timed<T> best(Supplier<P> prepare, java.util.function.Function<P, T> work) {
            double least = Double.POSITIVE_INFINITY;
            T answer;
            double total = 0;
            int runs = 0;
            do {
                P prepared = prepare.get();
                long started = System.nanoTime();
                answer = work.apply(prepared);
                double seconds = (System.nanoTime() - started) / 1e9;
                least = Math.min(least, seconds);
                total += seconds;
                runs++;
            } while (total < ENOUGH_SECONDS || (runs < FEW_RUNS && total < LONG_SECONDS));
            return new Timed<>(answer, least);
        }
    }

    /** Binding limits moved inside the range their dual claims, and the objective that the dual foretold. */
    private record Resolved(int count, double worst) {
        static Resolved some(Optimum best) {
            int count = 0;
            double worst = 0;
            for (int i = 0; i < best.program().rows().size() && count < RESOLVED_ROWS; i++) {
                double at = best.activity(i);
                if (best.dual(i) == 0) {
                    continue;
                }
                Range range = best.boundRange(i);
                double up = Math.min(range.high() - at, 1 + Math.abs(at)) / 2;
                double down = Math.min(at - range.low(), 1 + Math.abs(at)) / 2;
                double by = up > down ? up : -down;
                if (Math.abs(by) > 1e-4) {
                    double foretold = best.objective() + best.dual(i) * by;
                    double apart = Math.abs(moved(best, i, at + by) - foretold);
                    worst = Math.max(worst, apart / Math.max(1, Math.abs(foretold)));
                    count++;
                }
            }
            return new Resolved(count, worst);
        }

        private static double moved(Optimum best, int row, double to) {
            Row r = best.program().rows().get(row);
            boolean lower = Math.abs(best.activity(row) - r.lower()) <= Math.abs(best.activity(row) - r.upper());
            boolean equal = r.lower() == r.upper();
            try (Session session = best.program().open()) {
                session.rowBounds(row, lower ? to : r.lower(), !lower || equal ? to : r.upper());
                return session.solve() instanceof Optimum again ? again.objective() : Double.NaN;
            }
        }
    }
}
