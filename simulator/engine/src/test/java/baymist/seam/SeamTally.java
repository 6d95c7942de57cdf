package baymist.seam;
import baymist.cavity.*; import baymist.scene.*; import baymist.scene.io.*; import java.nio.file.*; import java.util.*;
final class SeamTally { public static void main(String[] a){ for(String f:a){ Scene s=SceneReader.read(Path.of(f)); Cavity c=CavityBuilder.build(s); long t=System.nanoTime(); List<SeamSegment> l=SeamFinder.find(c); double ms=(System.nanoTime()-t)/1e6;
 System.out.printf("%s triangles %d: %d segments, %.0f ms%n",f,c.cutSheets().triangleCount(),l.size(),ms);
 TreeMap<String,double[]> m=new TreeMap<>(); for(SeamSegment x:l){ double[] v=m.computeIfAbsent(c.parts().get(x.partA()).name()+" - "+c.parts().get(x.partB()).name()+" "+x.kind().word(),k->new double[2]); v[0]+=x.lengthM(); v[1]+=x.lengthM()*x.wedges().size();}
 double[] t2=new double[2]; m.forEach((k,v)->{t2[0]+=v[0];t2[1]+=v[1];}); System.out.printf("  %.3f m, sides %.3f m%n",t2[0],t2[1]); int n=0; for(var e:m.entrySet()) if(n++<45) System.out.printf("   %-60s %.4f %.4f%n",e.getKey(),e.getValue()[0],e.getValue()[1]); } } }
