package haywright.forage.lot;

import haywright.chance.Gaussian;
import haywright.forage.Analyte;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What a report that is not made yet would likely read.
 *
 * @param analytes in the order of {@code reads}
 * @param log whether one reads on the scale of its logarithm
 * @param reads on the scales of the bells
 */
public record NextReport(List<Analyte> analytes, List<Boolean> log, Gaussian reads) {
    public NextReport {
        analytes = List.copyOf(analytes);
        log = List.copyOf(log);
    }

    public int size() {
        return analytes.size();
    }

    /** One such report, in each analyte's unit; what none can read is moved to the nearest that one can. @param z standard normal values */
    public Map<Analyte, Double> at(double[] z) {
        var x = reads.at(z);
        var values = new EnumMap<Analyte, Double>(Analyte.class);
        for (int i = 0; i < x.length; i++) {
            var possible = analytes.get(i).possible();
            double value = log.get(i) ? StrictMath.exp(x[i]) : x[i];
            values.put(analytes.get(i), Math.max(possible.low(), Math.min(possible.high(), value)));
        }
        return Collections.unmodifiableMap(values);
    }
}
