package tideless.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import javax.imageio.ImageIO;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/** Draws one picture a lesson: the EC of two twins in one field, with the crop's band. */
final class DrawLessons {
    private static final int WIDTH = 900;
    private static final int HEIGHT = 420;
    private static final int LEFT = 70;
    private static final int TOP = 50;
    private static final int RIGHT = 880;
    private static final int BOTTOM = 370;
    private static final Color[] INK = {new Color(0xB2, 0x4A, 0x00), new Color(0x00, 0x5A, 0xA0)};

    private DrawLessons() {}

    static Trace run(String name) {
        Path file = Path.of("scenarios", "lessons", name + ".toml");
        return Simulation.run(((Reading.Good) ScenarioReader.read(file)).scenario());
    }

    static int lastHour(Trace trace) {
        for (Event event : trace.events()) {
            if (event.kind() == Event.Kind.HARVEST) {
                return (int) (event.atS() / 3600) - 1;
            }
        }
        return trace.hours() - 1;
    }

    public static void main(String[] args) throws IOException {
        System.setProperty("java.awt.headless", "true");
        String[][] lessons = {
            {"rich-feed", "lean-feed"},
            {"hard-tap", "rain"},
            {"open-gap", "lid"},
            {"no-flush", "flush"}
        };
        Files.createDirectories(Path.of("docs/pictures"));
        for (int i = 0; i < lessons.length; i++) {
            draw(i + 1, lessons[i]);
        }
    }

    private static void draw(int lesson, String[] twins) throws IOException {
        Trace[] traces = {run(twins[0]), run(twins[1])};
        double top = 2;
        int hours = 0;
        for (Trace trace : traces) {
            hours = Math.max(hours, lastHour(trace) + 1);
            top = Math.max(top, trace.trays().get(0).ecMsPerCm().max(0, lastHour(trace) + 1));
        }
        top = Math.ceil(top * 2) / 2;
        BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(
                RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setColor(Color.WHITE);
        g.fillRect(0, 0, WIDTH, HEIGHT);
        var limits = traces[0].trays().get(0).tray().limits();
        g.setColor(new Color(0xE4, 0xF0, 0xE0));
        int high = y(limits.ecHighMsPerCm(), top);
        int low = y(limits.ecLowMsPerCm(), top);
        g.fillRect(LEFT, high, RIGHT - LEFT, low - high);
        g.setColor(Color.DARK_GRAY);
        g.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 15));
        g.drawString("the crop's band", LEFT + 8, low - 8);
        for (double ec = 0; ec <= top + 1e-9; ec += 0.5) {
            g.setColor(new Color(0xCC, 0xCC, 0xCC));
            g.drawLine(LEFT, y(ec, top), RIGHT, y(ec, top));
            g.setColor(Color.BLACK);
            g.drawString(String.format(Locale.ROOT, "%.1f", ec), LEFT - 38, y(ec, top) + 5);
        }
        for (int day = 0; day * 24 <= hours; day += 7) {
            int x = x(day * 24, hours);
            g.drawLine(x, BOTTOM, x, BOTTOM + 5);
            g.drawString(Integer.toString(day), x - 6, BOTTOM + 22);
        }
        g.drawString("days in the tray", (LEFT + RIGHT) / 2 - 50, BOTTOM + 42);
        g.drawString("EC of the tray, mS/cm", LEFT, TOP - 12);
        for (int k = 0; k < 2; k++) {
            TrayTrace tray = traces[k].trays().get(0);
            Path2D line = new Path2D.Double();
            for (int h = 0; h <= lastHour(traces[k]); h++) {
                double px = x(h, hours);
                double py = BOTTOM - (BOTTOM - TOP) * tray.ecMsPerCm().at(h) / top;
                if (h == 0) {
                    line.moveTo(px, py);
                } else {
                    line.lineTo(px, py);
                }
            }
            g.setColor(INK[k]);
            float[] dash = k == 0 ? null : new float[] {9, 5};
            g.setStroke(
                    new BasicStroke(3, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dash, 0));
            g.draw(line);
            int at = RIGHT - 370 + 175 * k;
            g.drawLine(at, TOP - 17, at + 40, TOP - 17);
            g.drawString(traces[k].scenario().title(), at + 48, TOP - 12);
            g.setStroke(new BasicStroke(1));
        }
        g.dispose();
        ImageIO.write(image, "png", Path.of("docs/pictures/lesson-" + lesson + ".png").toFile());
    }

    private static int x(int hour, int hours) {
        return LEFT + (int) Math.round((RIGHT - LEFT) * (double) hour / hours);
    }

    private static int y(double ec, double top) {
        return BOTTOM - (int) Math.round((BOTTOM - TOP) * ec / top);
    }
}
