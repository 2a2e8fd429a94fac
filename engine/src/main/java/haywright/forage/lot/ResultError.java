package haywright.forage.lot;

import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.Marginal;
import haywright.forage.book.Prior;
import haywright.forage.lab.Tested;
import haywright.sampling.Crop;
import haywright.sampling.Precision;
import haywright.sampling.Spread;
import haywright.workings.PublishedTable;

/**
 * How far one result may lie from the lot's truth, as variances on the scale of the analyte's bell.
 *
 * @param sampling of the composite
 * @param bias what this laboratory's results by this method share
 * @param repeat what is left, and averages away
 */
public record ResultError(double sampling, double bias, double repeat) {
    private static final PublishedTable NIR = PublishedTable.read(ResultError.class, "nir_error.csv");

    /** A published judgment: two nitrate results within 100 ppm of nitrogen are no different. */
    private static final double NITRATE_FLOOR_PPM = 50;

    public double laboratory() {
        return bias + repeat;
    }

    public static ResultError of(Prior prior, Analyte analyte, Tested tested) {
        var cell = prior.cells().get(prior.index(analyte)).marginal();
        var wet = Spread.ofLaboratory(analyte.id()).orElseThrow();
        double repeat = onScale(wet.laboratory(), wet.ofValue(), cell);
        double bias = onScale(wet.laboratory() + wet.laboratoryBias(), wet.ofValue(), cell) - repeat;
        if (analyte == Analyte.NO3N) {
            double cv = Math.sqrt(wet.laboratory() + wet.laboratoryBias()) / 100;
            double value = tested.figure(analyte, cell.center());
            double more = Math.max(1, NITRATE_FLOOR_PPM / value / cv);
            repeat = onScale(wet.laboratory() * more * more, true, cell);
            bias = onScale((wet.laboratory() + wet.laboratoryBias()) * more * more, true, cell) - repeat;
        } else if (tested.method(analyte) != Tested.Method.WET) {
            double all = tested.method(analyte) == Tested.Method.NIR
                    ? nir(analyte, cell)
                    : (nir(analyte, cell) + repeat + bias) / 2;
            repeat = Math.min(repeat, all / 2);
            bias = all - repeat;
        }
        return new ResultError(
                sampling(prior, analyte, tested), bias, repeat / tested.design().analyses());
    }

    /** NIR has no calibration for nitrate that holds: such a figure is no measurement. */
    static boolean isMeasurement(Analyte analyte, Tested.Method method) {
        return !(analyte == Analyte.NO3N && method == Tested.Method.NIR);
    }

    /** Whether anybody says how far one sample of it lies from the lot. */
    static boolean isKnown(Prior prior, Analyte analyte) {
        return Spread.isInBook(crop(prior.feedClass()), like(analyte).id());
    }

    private static double nir(Analyte analyte, Marginal cell) {
        var row = NIR.row("analyte", analyte.id());
        var share = row.number("of_prior_sd");
        if (share.isPresent()) {
            return Math.pow(share.getAsDouble() * cell.sd(), 2);
        }
        return onScale(Math.pow(row.number("sd").orElseThrow(), 2), false, cell);
    }

    /**
     * How far one bale or load lies from its lot. The book's whole spread: what it leans on for nitrate are bales of one
     * field, tested bale by bale, so none of it is parted off as lying inside a bale.
     */
    public static double ofOneUnit(Prior prior, Analyte analyte) {
        var spread = Spread.ofBook(crop(prior.feedClass()), analyte.id());
        return onScale(
                spread.between() + spread.within(),
                spread.ofValue(),
                prior.cells().get(prior.index(analyte)).marginal());
    }

    private static double sampling(Prior prior, Analyte analyte, Tested tested) {
        var crop = crop(prior.feedClass());
        var cell = prior.cells().get(prior.index(analyte)).marginal();
        var like = like(analyte);
        var likeCell = prior.cells().get(prior.index(like)).marginal();
        var spread = Spread.ofBook(crop, like.id());
        double variance = new Precision(spread, tested.design(), tested.lotUnits(), 90).compositeVariance();
        double onScale = onScale(variance, spread.ofValue(), likeCell);
        return like == analyte ? onScale : onScale * Math.pow(cell.sd() / likeCell.sd(), 2);
    }

    /** Lignin and fat within one lot were published nowhere: they go with fiber and with leaf (judgment). */
    private static Analyte like(Analyte analyte) {
        return switch (analyte) {
            case LIGNIN -> Analyte.ADF;
            case FAT -> Analyte.CP;
            default -> analyte;
        };
    }

    /** A variance in the analyte's unit, or in percent of the value, carried to the scale of the bell. */
    private static double onScale(double variance, boolean ofValue, Marginal cell) {
        double relative = ofValue ? variance / 1e4 : variance / (cell.center() * cell.center());
        if (cell.log()) {
            return StrictMath.log1p(relative);
        }
        return ofValue ? relative * cell.center() * cell.center() : variance;
    }

    private static Crop crop(FeedClass feed) {
        return switch (feed) {
            case LEGUME_HAY, MIXED_HAY -> Crop.LEGUME_HAY;
            case GRASS_HAY, CEREAL_HAY -> Crop.GRASS_HAY;
            case STRAW, CROP_RESIDUE -> Crop.STRAW;
            case CORN_SILAGE -> Crop.CORN_SILAGE;
            case LEGUME_SILAGE, CEREAL_SILAGE -> Crop.HAYLAGE;
            case PASTURE -> Crop.PASTURE;
            // What comes by the load and was mixed at the mill scatters like distillers grains (judgment).
            default -> Crop.DISTILLERS_GRAINS;
        };
    }
}
