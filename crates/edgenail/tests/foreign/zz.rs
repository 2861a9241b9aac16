#[test]
fn zz(){
 crate::ground::on_every_class(|g|{
   let added=edgenail::blocking::blocking(&g.house,&g.frame,&g.layout,&g.runs);
   for (r,s) in added.studs.iter().map(|s|(s.rect,format!("{s:?}"))).chain(added.widened.iter().map(|s|(s.rect,format!("{s:?}")))) { if r.x0==edgenail::Length::from_units(7802880) && r.y1==edgenail::Length::from_units(4800600) && r.y0==edgenail::Length::from_units(60960) {
     let f=g.frame.with(&added);
     for m in &f.members { if m.face.bounds().overlaps(&r.grown(edgenail::Length::inches(1))) { println!("{:?} {:?} {:?} {:?}",m.kind,m.axis,m.origin,m.face.points()); } }
     println!("{:?}", s);
     return Err("".into());
   }}
   Ok(())
 });
}
